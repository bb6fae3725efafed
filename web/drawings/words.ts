/** The few texts that only drawings need: clock times of columns, sides, fractions of a mile, lengths on paper. */
import { clock, clockSeconds, utcOf } from "../../src/index.ts";

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
