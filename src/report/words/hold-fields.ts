/** What is wrong with a hold as typed, in words that show how it is written. */
import type { DocumentIssue } from "../../debrief/document.ts";

type Words = (facts: DocumentIssue["facts"]) => string;

/** Each field by its name in the trade, and an example of how it is written. */
const FIELDS: Readonly<Record<string, readonly [name: string, example: string]>> = {
  inbound: ["the inbound course", "247, or 247T where it is true"],
  tas: ["the true airspeed", "100, in knots"],
  wind: ["the wind", "192/20, from 192° at 20 knots, or 192T/20 where it is true"],
  turns: ["the side of the turns", "right or left"],
  leg: ["the leg", "1 min, 90 s or 4 NM"],
  altitude: ["the altitude", "3000, in feet"],
  timing: ["the timing", "us or icao"],
  bank: ["the bank", "25, in degrees"],
  rate: ["the turn rate", "3, in degrees a second"],
  windDoubt: ["the doubt of the wind", "5, in knots"],
  variation: ["the variation", "3E or 2.5W"],
  declination: ["the station’s declination", "3E or 2.5W"],
};

const name = (field: unknown): string => FIELDS[String(field)]?.[0] ?? String(field);
const example = (field: unknown): string => FIELDS[String(field)]?.[1] ?? "a number";

/** What is most likely meant by a text that cannot be read, and how that is written. */
function hint(field: unknown, text: string): string {
  const whole = Number(/^\s*(\d+)/.exec(text)?.[1]);
  if ((field === "inbound" || field === "wind") && whole > 360) return " A direction is 360 at most.";
  return /\d,\d/.test(text) ? " Decimals take a point, as in 2.5." : "";
}

/** Degrees stand at their number, other units apart from it. */
const unitOf = (unit: unknown): string => (String(unit).startsWith("°") ? String(unit) : ` ${unit}`);

export const HOLD_FIELD_WORDS: Readonly<Record<string, Words>> = {
  "hold-field-missing": (f) => `${name(f.field)} is not given. Write it as in ${example(f.field)}.`,
  "hold-field-unreadable": (f) =>
    `“${f.text}” cannot be read as ${name(f.field)}.${hint(f.field, String(f.text))} Write it as in ${example(f.field)}.`,
  "hold-field-out-of-range": (f) =>
    `${f.value}${unitOf(f.unit)} is out of range for ${name(f.field)}: ${f.least} to ${f.most}${unitOf(f.unit)}.`,
  "hold-mixed-references": (f) =>
    `the inbound course is ${f.course} and the wind ${f.wind}. Give the variation, as in 3E, or write both in one reference.`,
};
