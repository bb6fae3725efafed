/** Heights, rates, distances and times in words, no finer than a GPS tells them. */
import type { Finding } from "../../debrief/document.ts";
import { clockSeconds, count, duration } from "./number.ts";

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

/** As in ", and on to 0.82 NM, over full scale, at 09:16:40 UTC"; empty where it came back from where the turn ended. */
export const wentOn = ({ wentOnNm, wentOnNeedle, wentOnUtc }: Finding["facts"]): string =>
  typeof wentOnNm === "number"
    ? `, and on to ${wentOnNm.toFixed(2)} NM, ${needleWords(wentOnNeedle)}, at ${clockSeconds(String(wentOnUtc))} UTC`
    : "";
