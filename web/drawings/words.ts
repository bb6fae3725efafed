/** The few texts that drawings and their tables need: values of columns, clock times, sides, fractions of a mile, lengths on paper. */
import {
  type CourseFacts,
  clock,
  clockSeconds,
  flownCourse,
  flownHeading,
  offCourse,
  utcOf,
} from "../../src/index.ts";

/** A value of a column in words; columns hold NaN where a value is not known. */
export const known = (value: number, words: (value: number) => string): string =>
  Number.isFinite(value) ? words(value) : "not known";

/** A speed of a column, as in "98 kt". */
export const knots = (value: number): string => known(value, (kt) => `${Math.round(kt)} kt`);

/** Share of full scale within which an aircraft is on course. As in all of the report. */
const QUARTER = 0.25;

type Varied = { readonly variation?: CourseFacts["variation"] | undefined };

/** A course, radial or track of a column in words. */
export const columnCourse = (trueDeg: number, { variation }: Varied): string =>
  known(trueDeg, (deg) => flownCourse(deg, variation));

/** A heading of a column in words. */
export const columnHeading = (trueDeg: number, { variation }: Varied): string =>
  known(trueDeg, (deg) => flownHeading(deg, variation));

/** Hours and minutes of a time in a column, as in "09:45". */
export const clockText = (timeMs: number): string => clock(utcOf(timeMs));

/** With seconds, as in "09:45:31". */
export const clockSecondsText = (timeMs: number): string => clockSeconds(utcOf(timeMs));

export const sideWord = (value: number): string => (value > 0 ? "right" : "left");

/** Beside its course in words: on it only while the needle is; near a station it is far off in next to no distance. */
export function besideCourse(offNm: number, needle: number): string {
  const words = offCourse(offNm);
  const off = words === "on course" && Math.abs(needle) >= QUARTER;
  return off ? `under 0.01 NM ${sideWord(needle)} of course` : words;
}

/** As in "¼", "½", "¾", "0.1", "2". */
export function fractionText(value: number): string {
  const sign = { 0.25: "¼", 0.5: "½", 0.75: "¾" }[value];
  return sign ?? String(value);
}

/** Millimetres as in "20 mm", one decimal only where it matters. */
export const millimetreText = (mm: number): string =>
  `${mm >= 10 ? Math.round(mm) : Math.round(mm * 10) / 10} mm`;
