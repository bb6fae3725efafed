/** Directions as a pilot writes them: magnetic unless marked true. */
import { direction } from "../quantity/angle.ts";

/** 0 to 360 with at most one letter: `218`, `041`, `218.5`, `218T`, `218 M`, `218°T`. */
export const DIRECTION_PATTERN =
  /^\s*(360(\.0+)?|(3[0-5][0-9]|[0-2]?[0-9]?[0-9])(\.[0-9]+)?)\s*°?\s*[TtMm]?\s*$/;

/** `2.5E`, `3 W`, `2.5°E`: a declination with its side, as in a point list. */
export const DECLINATION_PATTERN = /^\s*(\d+(?:\.\d+)?)\s*°?\s*([EeWw])\s*$/;

/** Degrees, east positive, of a declination written with its side; anything else as it is, for the schema to judge. */
export function declinationOf(value: unknown): unknown {
  const [, size, side] = (typeof value === "string" && DECLINATION_PATTERN.exec(value)) || [];
  return size === undefined ? value : /w/i.test(side!) ? -Number(size) : Number(size);
}

export interface WrittenDirection {
  /** [0, 360), in its own reference. */
  readonly degrees: number;
  readonly reference: "magnetic" | "true";
}

/** Reads `218`, `"041"`, `218T`, `218°M`. The value has passed the schema. */
export function readDirection(value: number | string): WrittenDirection {
  const text = String(value);
  const degrees = Number.parseFloat(text);
  if (!Number.isFinite(degrees)) throw new RangeError(`invalid direction: ${value}`);
  return { degrees: direction(degrees), reference: /t\s*$/i.test(text) ? "true" : "magnetic" };
}

/** What is wrong with a direction that did not pass the schema, as an issue's code and facts. */
export function directionProblem(value: unknown): {
  code: string;
  facts: Record<string, string | number | null>;
} {
  const number = typeof value === "number" ? value : typeof value === "string" ? asNumber(value) : Number.NaN;
  if (Number.isFinite(number)) {
    return { code: "brief-course-out-of-range", facts: { value: String(value), least: 0, most: 360 } };
  }
  if (typeof value === "string") return { code: "brief-not-a-direction", facts: { value } };
  return { code: "brief-wrong-type", facts: { expected: "direction", found: foundType(value) } };
}

function asNumber(text: string): number {
  const match = /^\s*([-+]?\d+(?:\.\d+)?)\s*°?\s*[tm]?\s*$/i.exec(text);
  return match ? Number(match[1]) : Number.NaN;
}

/** The type of a value in a user's words. */
export function foundType(value: unknown): string {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "list";
  if (typeof value === "object") return "map";
  if (typeof value === "string") return "text";
  if (typeof value === "boolean") return "yes or no";
  return typeof value;
}

/** As on a chart: three digits, north is 360. */
export function directionText({ degrees, reference }: WrittenDirection): string {
  const rounded = Math.round(degrees * 10) / 10 || 360;
  const [whole, part] = String(rounded).split(".");
  return `${whole!.padStart(3, "0")}${part ? `.${part}` : ""}°${reference === "true" ? "T" : "M"}`;
}
