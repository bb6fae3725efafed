/** The fixed fields of FAI IGC records, and those that an I record adds to each fix. */
import { direction } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { OptionalColumn } from "./columns.ts";

/** Whole number of the digits in `[start, end)`, or NaN. */
export function digits(text: string, start: number, end: number): number {
  if (end > text.length || end <= start) return Number.NaN;
  let value = 0;
  for (let i = start; i < end; i++) {
    const d = text.charCodeAt(i) - 48;
    if (!(d >= 0 && d <= 9)) return Number.NaN;
    value = value * 10 + d;
  }
  return value;
}

/** As `digits`, where a minus may stand in place of a leading zero. */
export const signedDigits = (text: string, start: number, end: number): number =>
  text.charCodeAt(start) === 45 ? -digits(text, start + 1, end) : digits(text, start, end);

/** Five characters of metres; a minus stands in place of a leading zero (A4.1). */
export function metresAt(text: string, start: number): number {
  return signedDigits(text, start, start + 5);
}

/** DDMMmmm and hemisphere to degrees, north and east positive; `more` are further decimals of the minute. */
export function degreesAt(
  text: string,
  start: number,
  wide: 2 | 3,
  more: number,
  moreDigits: number,
): number {
  const whole = digits(text, start, start + wide);
  const minutes = digits(text, start + wide, start + wide + 5);
  const side = text[start + wide + 5];
  const sign = side === "N" || side === "E" ? 1 : side === "S" || side === "W" ? -1 : Number.NaN;
  const fine = moreDigits > 0 && !Number.isNaN(more) ? more / 10 ** moreDigits : 0;
  if (!(minutes < 60_000)) return Number.NaN;
  return sign * (whole + (minutes + fine) / 60_000);
}

/** A field that the I record places in every fix: code and characters, from 0. */
export interface Extension {
  readonly code: string;
  readonly start: number;
  readonly end: number;
}

/** `I NN SSFFCCC...`: count, then first and last character (from 1) and the code of each (A4.2). */
export function extensionsOf(text: string): Extension[] | null {
  const count = digits(text, 1, 3);
  if (Number.isNaN(count) || text.trimEnd().length < 3 + 7 * count) return null;
  const found: Extension[] = [];
  for (let k = 0; k < count; k++) {
    const at = 3 + 7 * k;
    const start = digits(text, at, at + 2) - 1;
    const end = digits(text, at + 2, at + 4);
    if (!(start >= 35 && end > start)) return null;
    found.push({ code: text.slice(at + 4, at + 7), start, end });
  }
  return found;
}

const KNOTS_PER_KMH = 1000 / METRES_PER_NAUTICAL_MILE;
const same = (value: number): number => value;
const knots = (kmh: number): number => kmh * KNOTS_PER_KMH;

/**
 * Read of the three-letter codes (A7): speeds in km/h, directions in degrees, outside air in °C with its minus, accuracy in metres. Three digits are whole numbers,
 * digits beyond are decimals (from memory; a column of speeds that does not fit the flown way is refused later).
 */
export const EXTENSION_COLUMNS: Readonly<
  Record<string, readonly [OptionalColumn, (value: number) => number]>
> = {
  TAS: ["trueAirspeed", knots],
  IAS: ["indicatedAirspeed", knots],
  GSP: ["groundSpeed", knots],
  TRT: ["trackAngle", direction],
  HDT: ["headingTrue", direction],
  HDM: ["headingMagnetic", direction],
  OAT: ["outsideAir", same],
  SIU: ["satellites", same],
  // Metres that hold 95.45 % of the positions; of a circular normal, 2.486 standard deviations of an axis.
  FXA: ["positionSd", (metres) => metres / Math.sqrt(-2 * Math.log(1 - 0.9545))],
};
export const WHOLE_DIGITS = 3;
