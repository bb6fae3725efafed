/** The brief in the making: the values of a written brief, held as they were typed. */
import { readAngle } from "../../src/index.ts";

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

/** A number where the text is one, with a point or a comma; else the text, for the reader to say what is wrong. */
export function typedNumber(text: string): number | string {
  const plain = text.trim().replace(/(?<=\d)[,\s](?=\d{3}\b)(?!.*\.)/, "");
  return NUMBER.test(plain) ? Number(plain.replace(",", ".")) : text;
}

/** "35.672, 172.395", "35.672 172.395", "N35°40.3' E172°23.7'": latitude and longitude; null where it is not both. */
export function typedPlace(text: string): readonly [number, number] | null {
  const plain = text.trim();
  const ways = [
    /^(.+?)\s*[,;]\s*(.+)$/,
    /^(.*?[NS])\s*([EW\d].*)$/i,
    /^([NS].*?)\s*([EW].*)$/i,
    /^(\S+)\s+(\S+)$/,
  ];
  for (const way of ways) {
    const [, lat = "", lon = ""] = way.exec(plain) ?? [];
    const [latitude, longitude] = [readAngle(lat), readAngle(lon)];
    if (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) return [latitude, longitude];
  }
  return null;
}

/** A place as it is shown: to a ten-thousandth of a degree or as fine as it is written. */
export const placeText = (latitude: number, longitude: number): string => `${latitude}, ${longitude}`;
