/** What the headings of a point list mean, and what stands beneath them. */
import type { PointKind } from "../geodesy/index.ts";
import { direction } from "../quantity/angle.ts";
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { nameAndUnit } from "./csv-columns.ts";
import { readTableNumber } from "./csv-number.ts";

/** Spellings without case, spaces, signs and units. Our own list; for `ident` also what people call it. */
const SPELLINGS = {
  ident: ["ident", "identifier", "id", "name", "fix", "point", "waypoint"],
  latitude: ["lat", "latitude"],
  longitude: ["lon", "lng", "long", "longitude"],
  kind: ["kind", "type"],
  elevation: ["elevation", "elev", "altitude", "alt"],
  declination: ["declination", "variation"],
  endLatitude: ["endlat", "endlatitude", "farendlat", "farendlatitude"],
  endLongitude: ["endlon", "endlng", "endlong", "endlongitude", "farendlon", "farendlongitude"],
  endElevation: ["endelevation", "endelev", "farendelevation"],
  course: ["course", "runwaycourse"],
  length: ["length", "runwaylength"],
} as const;
export type PointColumn = keyof typeof SPELLINGS;

export interface PointField {
  readonly index: number;
  readonly heading: string;
  /** As written in the heading: "m", "ft" or nothing. */
  readonly unit: string;
}
export type PointFields = ReadonlyMap<PointColumn, PointField>;

/** Of several columns of one meaning the one with the foremost spelling counts, then the first. */
export function pointFields(headings: readonly string[]): PointFields {
  const named = headings.map((heading, index) => ({ heading, index, ...nameAndUnit(heading) }));
  const fields = new Map<PointColumn, PointField>();
  for (const column of Object.keys(SPELLINGS) as PointColumn[]) {
    for (const spelling of SPELLINGS[column]) {
      const field = named.find(({ name }) => name === spelling);
      if (field === undefined) continue;
      fields.set(column, field);
      break;
    }
  }
  return fields;
}

const METRES = new Set(["m", "metres", "meters"]);

/** Feet; where the heading says metres, from those. NaN where unreadable. */
export function readFeet(text: string, { unit }: PointField, commaIsDecimal: boolean): number {
  const value = readTableNumber(text, commaIsDecimal);
  return METRES.has(unit) ? value / METRES_PER_FOOT : value;
}

/** "2.5", "-2.5", "2.5E", "3 W": degrees, east positive. NaN where unreadable. */
export function readDeclination(text: string, commaIsDecimal: boolean): number {
  const [, size = "", side = ""] = /^([-+]?[\d.,]+)\s*°?\s*([EW]?)$/i.exec(text.trim()) ?? [];
  const value = readTableNumber(size, commaIsDecimal);
  if (side !== "" && /^[-+]/.test(size)) return Number.NaN; // two signs
  const signed = side.toUpperCase() === "W" ? -value : value;
  return Math.abs(signed) <= 180 ? signed : Number.NaN;
}

/** "218" or "218M" is magnetic, "218T" true, as in a brief. Null where unreadable. */
export function readRunwayCourse(
  text: string,
  commaIsDecimal: boolean,
): { readonly degrees: number; readonly reference: "true" | "magnetic" } | null {
  const [, size = "", mark = ""] = /^([\d.,]+)\s*°?\s*([TM]?)$/i.exec(text.trim()) ?? [];
  const degrees = readTableNumber(size, commaIsDecimal);
  if (!(degrees >= 0 && degrees <= 360)) return null;
  return { degrees: direction(degrees), reference: mark.toUpperCase() === "T" ? "true" : "magnetic" };
}

/** Words for a kind, in common use (no source). What is none of these is "other". */
const KIND_WORDS: readonly (readonly [RegExp, PointKind])[] = [
  [/^(?:vor|dvor|vordme|dvordme|vortac)$/, "vor"],
  [/^(?:ndb|ndbdme|locator)$/, "ndb"],
  [/^(?:dme|tacan)$/, "dme"],
  [/^(?:waypoint|wpt|fix|intersection|reportingpoint|point)?$/, "waypoint"],
  [/^(?:runway|rwy|threshold)$/, "runway"],
];

/** Words that say that it is none of these. */
const OTHER = /^(?:other|airport|aerodrome|airfield|landmark|town|place)$/;

/** `known`: the word is one of ours; what is none counts as "other". */
export function readKind(text: string): { readonly kind: PointKind; readonly known: boolean } {
  const plain = text.toLowerCase().replace(/[^a-z]/g, "");
  const kind =
    text.trim() !== "" && plain === "" ? undefined : KIND_WORDS.find(([pattern]) => pattern.test(plain))?.[1];
  return { kind: kind ?? "other", known: kind !== undefined || OTHER.test(plain) };
}
