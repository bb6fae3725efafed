/** The brief in the making: the values of a written brief, held as they were typed. */
import { readAngle } from "../../src/index.ts";
import { plainFeet, typedHeight } from "./feet.ts";

export type Path = readonly (string | number)[];
export type Values = Readonly<Record<string, unknown>>;

export const isMap = (value: unknown): value is Values =>
  typeof value === "object" && value !== null && !Array.isArray(value);
export const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
export const mapOf = (value: unknown): Values => (isMap(value) ? value : {});

export function at(value: unknown, path: Path): unknown {
  let inner = value;
  for (const step of path) inner = (inner as Record<string | number, unknown> | null | undefined)?.[step];
  return inner;
}

/** The values with another one at a path; undefined takes the key away. What is not touched stays the same object. */
export function put(value: unknown, path: Path, to: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return to;
  if (typeof step === "number") {
    const list = [...listOf(value)];
    list[step] = put(list[step], rest, to);
    return list;
  }
  const map = { ...mapOf(value) };
  const inner = put(map[step], rest, to);
  if (inner === undefined) delete map[step];
  else map[step] = inner;
  return map;
}

/** A value as it stands in its field. */
export const textOf = (value: unknown): string =>
  typeof value === "string"
    ? value
    : typeof value === "number" && Number.isFinite(value)
      ? String(value)
      : "";

const NUMBER = /^[-+]?\d+(?:[.,]\d+)?$/;

/** A unit behind a number, by the end of the name of what it is a value of. */
const UNITS: readonly (readonly [RegExp, RegExp])[] = [
  [/_kt$/, /\s*(?:kts?|ktas|knots)\.?$/i],
  [/_nm$/, /\s*nm\.?$/i],
  [/_deg$|^declination$/, /\s*(?:°|deg|degrees)$/i],
];

/** Heights that are flown: whole feet, or another number is meant. */
export const HEIGHTS = new Set([
  ...["altitude_ft", "to_ft", "final_fix_ft", "decision_ft", "minimum_ft", "not_below_ft"],
]);
/** What comes in parts: a comma before three figures parts no thousands. */
const IN_PARTS = /_nm$|_deg$|^declination$|^lat$|^lon$/;

/** Thousands parted by a comma or a space taken together. */
const whole = (text: string): string => text.replace(/(?<=\d)[,\s](?=\d{3}\b)(?!.*\.)/, "");

/** A number where the text is one, with a point or a comma, and with the unit of its `key` or without; else the text, for the reader to say what is wrong. */
export function typedNumber(text: string, key = ""): number | string {
  if (HEIGHTS.has(key)) return typedHeight(text) ?? text;
  const unit = UNITS.find(([keys]) => keys.test(key))?.[1];
  const bare = key.endsWith("_ft") ? plainFeet(text) : unit ? text.trim().replace(unit, "") : text.trim();
  const plain = IN_PARTS.test(key) ? bare : whole(bare);
  return NUMBER.test(plain) ? Number(plain.replace(",", ".")) : text;
}

/** Latitude from longitude: by a semicolon, by a comma and a space, by the only comma, by hemispheres, by a space. */
const BETWEEN = [
  /^(.+?)\s*;\s*(.+)$/,
  /^(.+?)\s*,\s+(.+)$/,
  /^([^,]+),([^,]+)$/,
  /^(.*?[NS])\s*([EW\d].*)$/i,
  /^([NS].*?)\s*([EW].*)$/i,
  /^(\S+)\s+(\S+)$/,
];

/**
 * "35.672, 172.395", "35,672 172,395", "N35°40.3' E172°23.7'": latitude and longitude. Null where it is not both, and
 * where it can be read in two ways, as "33,9 15" can.
 */
export function typedPlace(text: string): readonly [number, number] | null {
  const plain = text.trim();
  const places = new Map<string, readonly [number, number]>();
  for (const way of BETWEEN) {
    const [, lat = "", lon = ""] = way.exec(plain) ?? [];
    const place = [readAngle(lat), readAngle(lon)] as const;
    if (Math.abs(place[0]) <= 90 && Math.abs(place[1]) <= 180) places.set(place.join(), place);
  }
  const [only = null, other] = places.values();
  return other ? null : only;
}

/** A place as it is shown: to a ten-thousandth of a degree or as fine as it is written. */
export const placeText = (latitude: number, longitude: number): string => `${latitude}, ${longitude}`;

const IN_DEGREES = /^[-+]?[\d.]+\s*[,;\s]\s*[-+]?[\d.]+$/;

/** What a place comes to that was not typed in plain degrees; null where it was, and where it is none. */
export function placeNote(text: string): string | null {
  const place = IN_DEGREES.test(text.trim()) ? null : typedPlace(text);
  return place && placeText(...(place.map((degrees) => Number(degrees.toFixed(5))) as [number, number]));
}
