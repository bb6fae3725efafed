/** The few texts that drawings and their tables need: values of columns, clock times, sides, fractions of a mile, lengths on paper. */
import { clock, clockSeconds, flownDirection, magneticFromTrue, utcOf } from "../../src/index.ts";

/** A value of a column in words; columns hold NaN where a value is not known. */
export const known = (value: number, words: (value: number) => string): string =>
  Number.isFinite(value) ? words(value) : "not known";

/** A speed of a column, as in "98 kt". */
export const knots = (value: number): string => known(value, (kt) => `${Math.round(kt)} kt`);

/** True directions of columns in words, magnetic where the exercise itself is so: its variation is taken for theirs. */
export function directionsBeside(
  trueDeg: number,
  magneticDeg: number | null,
): (columnTrueDeg: number) => string {
  const variation = magneticDeg === null ? null : trueDeg - magneticDeg;
  return (columnTrueDeg) =>
    known(columnTrueDeg, (deg) =>
      flownDirection(deg, variation === null ? null : magneticFromTrue(deg, variation)),
    );
}

/** Hours and minutes of a time in a column, as in "09:45". */
export const clockText = (timeMs: number): string => clock(utcOf(timeMs));

/** With seconds, as in "09:45:31". */
export const clockSecondsText = (timeMs: number): string => clockSeconds(utcOf(timeMs));

export const sideWord = (value: number): string => (value > 0 ? "right" : "left");

/** As in "¼", "½", "¾", "0.1", "2". */
export function fractionText(value: number): string {
  const sign = { 0.25: "¼", 0.5: "½", 0.75: "¾" }[value];
  return sign ?? String(value);
}

/** Millimetres as in "20 mm", one decimal only where it matters. */
export const millimetreText = (mm: number): string =>
  `${mm >= 10 ? Math.round(mm) : Math.round(mm * 10) / 10} mm`;
