/** Heights, rates, distances and times in words, no finer than a GPS tells them. */
import { count, duration } from "./number.ts";

const ten = (value: unknown): number => Math.round(Number(value) / 10) * 10;

/** A height as measured, to 10 ft. */
export const feet = (ft: unknown): string => `${count(ten(ft))} ft`;
/** A vertical speed as measured, to 10 ft/min; without its sign. */
export const rate = (fpm: unknown): string => `${count(ten(Math.abs(Number(fpm))))} ft/min`;
export const miles = (nm: unknown): string => `${Math.abs(Number(nm)).toFixed(1)} NM`;
/** "82 seconds", "2 min 40 s". */
export const seconds = (s: unknown): string =>
  Number(s) < 120
    ? `${Math.round(Number(s))} ${Math.round(Number(s)) === 1 ? "second" : "seconds"}`
    : duration(Number(s));

/** As in "0.42 of full scale"; "over full scale" past that. */
export function needleWords(needle: unknown): string {
  const size = Math.abs(Number(needle));
  return size > 1 ? "over full scale" : `${size.toFixed(2)} of full scale`;
}

/** The same with the size past it, as in "5.48 times full scale". */
export function needleSize(needle: unknown): string {
  const size = Math.abs(Number(needle)).toFixed(2);
  return `${size} ${Number(size) > 1 ? "times" : "of"} full scale`;
}
