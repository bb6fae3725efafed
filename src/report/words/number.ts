/** Numbers as they stand on the sheet and in the text: sides, clocks in UTC, every angle with its M or T. */
import { threeFigures } from "../../quantity/angle.ts";

export const trueDirection = (degrees: number): string => `${threeFigures(degrees)}°T`;
export const magneticDirection = (degrees: number): string => `${threeFigures(degrees)}°M`;

/** A signed value as size and side, right positive; no side where it rounds to nothing. */
export function sided(value: number, digits: number, unit = ""): string {
  const size = Math.abs(value).toFixed(digits);
  const side = Number(size) === 0 ? "" : value > 0 ? " R" : " L";
  return `${size}${unit}${side}`;
}

/** As in "± 0.02"; a doubt too small for the digits shown says so. */
export function plusMinus(size: number, digits: number, unit = ""): string {
  const least = 10 ** -digits;
  return size < least / 2 ? `± under ${least.toFixed(digits)}${unit}` : `± ${size.toFixed(digits)}${unit}`;
}

export const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** 3,874, wherever the reader lives. By a pattern: a browser's first look into its locales takes 30 ms. */
export const count = (value: number): string => String(Math.round(value)).replace(/\B(?=(?:\d{3})+$)/g, ",");

/** 09:44 of an ISO time. */
export const clock = (utc: string): string => utc.slice(11, 16);
/** 09:44:10 of an ISO time. */
export const clockSeconds = (utc: string): string => utc.slice(11, 19);

/** A height to the hundred feet that altimeters are read to, as in "3,000 ft". */
export const heightWords = (ft: number): string => `${count(Math.round(ft / 100) * 100)} ft`;

export const utcOf = (ms: number): string => new Date(ms).toISOString();

const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);

/** 17 October 2026, of an ISO time. */
export const day = (utc: string): string =>
  utc.startsWith("1970-01-0") // as a log without a date is read
    ? "date not known"
    : `${Number(utc.slice(8, 10))} ${MONTHS[Number(utc.slice(5, 7)) - 1]} ${utc.slice(0, 4)}`;

/** 40 days, 1 h 05 min, 4 min 10 s or 29 s. */
export function duration(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  if (whole >= 172_800) return `${Math.round(whole / 86_400)} days`;
  if (whole >= 3600) return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
  if (whole < 60) return `${whole} s`;
  return whole % 60 === 0 ? `${minutes} min` : `${minutes} min ${whole % 60} s`;
}

export const secondsBetween = (startUtc: string, endUtc: string): number =>
  (Date.parse(endUtc) - Date.parse(startUtc)) / 1000;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A code of the document as words, as in "low-confidence" to "low confidence". */
export const plain = (code: string): string =>
  code
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replaceAll("-", " ")
    .toLowerCase();

/** As in "0.49 NM right of course"; "on course" where it rounds to nothing. */
export function offCourse(nm: number, digits = 2): string {
  const size = Math.abs(nm).toFixed(digits);
  return Number(size) === 0 ? "on course" : `${size} NM ${nm > 0 ? "right" : "left"} of course`;
}

/** As in "9° right"; "0°" where it rounds to nothing. */
export function degreesToSide(degrees: number): string {
  const size = Math.abs(Math.round(degrees));
  return size === 0 ? "0°" : `${size}° ${degrees > 0 ? "right" : "left"}`;
}

/** The doubt of a direction, as in "(± 2°)": whole degrees, never under 1. */
export const degreesDoubt = (degrees: number): string => `(± ${Math.max(1, Math.round(degrees))}°)`;

/** A direction as it was turned magnetic already: true where no variation is known. */
export const flownDirection = (trueDeg: number, magneticDeg: number | null): string =>
  magneticDeg === null ? trueDirection(trueDeg) : magneticDirection(magneticDeg);
