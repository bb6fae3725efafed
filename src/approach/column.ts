/** Reading columns between their rows: where a value is passed, and what another column shows there. */
import { utcText } from "../quantity/time.ts";
import type { Feet } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeterOff95 } from "../track/index.ts";
import type { ApproachRows } from "./rows.ts";

/** A place between two rows: `row` and a share of the way to the next one. */
export interface Moment {
  readonly row: number;
  readonly share: number;
}

/** Where a column first passes a value in [start, end), rising or falling; null where it does not. */
export function passing(
  column: Float64Array,
  value: number,
  way: "rising" | "falling",
  start: number,
  end: number,
): Moment | null {
  const sign = way === "rising" ? 1 : -1;
  for (let i = start; i + 1 < end; i++) {
    const [a, b] = [sign * (column[i]! - value), sign * (column[i + 1]! - value)];
    if (a <= 0 && b > 0) return { row: i, share: -a / (b - a) };
  }
  return null;
}

/** The first row at a moment or after it. */
export const ceilRow = ({ row, share }: Moment): number => (share > 0 ? row + 1 : row);

/** A column at a moment, straight between its rows. */
export const valueAt = (column: Float64Array, { row, share }: Moment): number => {
  const a = column[row]!;
  return share === 0 ? a : a + share * ((column[row + 1] ?? a) - a);
};

export const utcAt = (rows: ApproachRows, moment: Moment): string => utcText(valueAt(rows.timeMs, moment));
export const utcOfRow = (rows: ApproachRows, row: number): string | null =>
  rows.timed ? utcText(rows.timeMs[row]!) : null;

/** Half-width of the 95 % interval of a height as the altimeter showed it, set at the field: the log's doubt and the instrument's. Null where the elevation of the field is not known. */
export const altimeter95 = ({ heightSdFt, heightFt }: ApproachRows, row: number): Feet | null => {
  const doubt95 = Math.hypot(Z95 * heightSdFt[row]!, altimeterOff95(heightFt[row]!));
  return Number.isFinite(doubt95) ? doubt95 : null;
};

/** Rows [start, end) within so many seconds of a time. */
export function rowsWithin(rows: ApproachRows, from: number, to: number): { start: number; end: number } {
  let start = 0;
  while (start < rows.length && rows.timeMs[start]! < from) start++;
  let end = start;
  while (end < rows.length && rows.timeMs[end]! <= to) end++;
  return { start, end };
}

/** Mean of the known values of a part of a column; NaN where there is none. */
export function meanOf(column: Float64Array, start: number, end: number): number {
  let [sum, n] = [0, 0];
  for (let i = start; i < end; i++) {
    if (Number.isNaN(column[i]!)) continue;
    sum += column[i]!;
    n++;
  }
  return n > 0 ? sum / n : Number.NaN;
}
