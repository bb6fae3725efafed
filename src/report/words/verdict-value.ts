/** The numbers of a verdict: its value and doubt, its limit, and how sure it is. */
import type { Verdict } from "../../debrief/document.ts";
import { count } from "./number.ts";

const DIGITS: Readonly<Record<Verdict["unit"], number>> = {
  share: 2,
  NM: 2,
  ft: 0,
  "ft/min": 0,
  kt: 0,
  s: 0,
  deg: 0,
  side: 0,
};

/** A size without its unit. */
export function amount(value: number, unit: Verdict["unit"]): string {
  if (unit === "ft/min") return count(Math.round(value / 10) * 10); // as rates are told everywhere
  return unit === "ft" ? count(value) : value.toFixed(DIGITS[unit]);
}
export const unitWords = (unit: Verdict["unit"]): string =>
  unit === "share" ? "" : unit === "deg" ? "°" : ` ${unit}`;

/** What a value on the side that is never out is said to be: its title names the other one. */
const OTHER_SIDE: Readonly<Record<string, string>> = {
  "hold-entry": "inside it",
  "approach-minimum-below": "above it",
  "approach-decision-below": "above it",
  "approach-minimum-above": "below it",
  "approach-decision-above": "below it",
  "approach-step-down": "above it",
  "descent-below": "above it",
  "approach-gate-1000-sink": "up",
  "approach-gate-500-sink": "up",
};

/** Negative on the side that is never out. */
export const sideValue = ({ value, toward }: Verdict): number | null =>
  value === null ? null : (toward ?? value);

/** A size with its unit, and in words the side that the title does not name, as in "22 ft above it". */
export function sidedValue(verdict: Verdict, size: string): string {
  const { criterion, unit } = verdict;
  const value = sideValue(verdict)!;
  const shown = Number(amount(Math.abs(value), unit).replace(",", "")) > 0;
  if (value >= 0 || !shown) return size;
  const side = OTHER_SIDE[criterion];
  return side === undefined ? `−${size}` : `${size} ${side}`;
}

/** As in "0.86 ± 0.04" or "52 ± 60 ft", "22 ± 102 ft above it" on the side that is never out; a dash where there is none. */
export function verdictValue(verdict: Verdict): string {
  const { doubt95, unit } = verdict;
  const value = sideValue(verdict);
  if (value === null) return "–";
  const least = 10 ** -DIGITS[unit];
  const doubt = doubt95 === null ? "" : ` ± ${amount(Math.max(doubt95, least), unit)}`;
  return sidedValue(verdict, `${amount(Math.abs(value), unit)}${doubt}${unitWords(unit)}`);
}

/** As in "0.75 of full scale", "100 ft". */
export function verdictLimit({ limit, unit }: Verdict): string {
  if (limit === null) return "–";
  if (unit === "share") return limit.toFixed(2);
  return `${unit === "NM" ? limit : count(limit)}${unitWords(unit)}`;
}

/** As in "over 99 %"; the confidence of a verdict, or nothing. */
export function verdictConfidence({ confidence, verdict }: Verdict): string {
  if (confidence === null) return "";
  const percent = Math.floor(confidence * 100);
  if (verdict === "cannot tell") return `${percent} % inside`;
  return percent >= 99 ? "over 99 %" : `${percent} %`;
}
