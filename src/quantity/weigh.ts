/** Means and shares over rows of a flight, by time (or by distance where there are no times), honest for irregular intervals. */
import { selectPlace } from "./select.ts";
import type { Span } from "./span.ts";
import type { NauticalMiles } from "./units.ts";

/** What is read of rows to weigh them. */
export interface WeighedRows {
  readonly timed: boolean;
  readonly timeMs: Float64Array;
  readonly alongNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** 1 where the log is silent between this row and the one before. */
  readonly gapBefore: Uint8Array;
}

/** Half-width of a two-sided 95 % interval of a normal deviate, in standard deviations. */
export const Z95 = 1.96;

/**
 * Weight of the interval that ends at each row of the span (seconds, or NM where untimed); 0 for the first row
 * and over gaps in the log, because nobody knows what was flown there.
 */
export function intervals(rows: WeighedRows, span: Span): Float64Array {
  const weights = new Float64Array(span.end - span.start);
  for (let i = span.start + 1; i < span.end; i++) {
    if (rows.gapBefore[i]) continue;
    weights[i - span.start] = rows.timed ? (rows.timeMs[i]! - rows.timeMs[i - 1]!) / 1000 : stepNm(rows, i);
  }
  return weights;
}

/** Distance over the ground from the row before, NM. */
const stepNm = ({ alongNm, crossTrackNm }: WeighedRows, i: number): NauticalMiles =>
  Math.hypot(alongNm[i]! - alongNm[i - 1]!, crossTrackNm[i]! - crossTrackNm[i - 1]!);

/** Distance over the ground between the rows of a span, NM; straight over gaps, or without them. */
export function distanceFlown(rows: WeighedRows, { start, end }: Span, overGaps: boolean): NauticalMiles {
  let sum = 0;
  for (let i = start + 1; i < end; i++) if (overGaps || !rows.gapBefore[i]) sum += stepNm(rows, i);
  return sum;
}

export interface Weighed {
  readonly mean: number;
  readonly rms: number;
  /** Weight over which the value was known. */
  readonly weight: number;
}

/** Mean and root mean square of a column that runs straight between its rows; rows of NaN are left out. NaN mean where nothing is known. */
export function weigh(column: Float64Array, span: Span, weights: Float64Array): Weighed {
  let weight = 0;
  let sum = 0;
  let squares = 0;
  for (let i = span.start + 1; i < span.end; i++) {
    const w = weights[i - span.start]!;
    const a = column[i - 1]!;
    const b = column[i]!;
    if (!(w > 0) || Number.isNaN(a) || Number.isNaN(b)) continue;
    weight += w;
    sum += (w * (a + b)) / 2;
    squares += (w * (a * a + a * b + b * b)) / 3; // integral of the square of a straight line
  }
  return weight > 0
    ? { mean: sum / weight, rms: Math.sqrt(squares / weight), weight }
    : { mean: Number.NaN, rms: Number.NaN, weight };
}

/** Part of an interval, 0 to 1, in which a value running straight from a to b is beyond +limit or -limit. */
function partBeyond(a: number, b: number, limit: number): number {
  const above = (from: number, to: number): number => {
    if (from >= limit && to >= limit) return 1;
    if (from < limit && to < limit) return 0;
    return (Math.max(from, to) - limit) / Math.abs(to - from);
  };
  return above(a, b) + above(-a, -b);
}

/** Share of the weight, 0 to 1, in which the size of a column is beyond a limit; rows of NaN are left out. 0 where nothing is known. */
export function shareBeyond(column: Float64Array, span: Span, weights: Float64Array, limit: number): number {
  let weight = 0;
  let beyond = 0;
  for (let i = span.start + 1; i < span.end; i++) {
    const w = weights[i - span.start]!;
    const a = column[i - 1]!;
    const b = column[i]!;
    if (!(w > 0) || Number.isNaN(a) || Number.isNaN(b)) continue;
    weight += w;
    beyond += w * partBeyond(a, b, limit);
  }
  return weight > 0 ? beyond / weight : 0;
}

/** The row of the span where a column is largest in size; -1 where it is unknown throughout. */
export function rowOfLargest(column: Float64Array, span: Span, from = 0): number {
  let row = -1;
  for (let i = span.start; i < span.end; i++) {
    if (Number.isNaN(column[i]!)) continue;
    if (row < 0 || Math.abs(column[i]! - from) > Math.abs(column[row]! - from)) row = i;
  }
  return row;
}

/** Middle value of a part of a column; NaN where it is empty. */
export function median(values: Float64Array): number {
  const room = new Float64Array(values.length);
  let n = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) room[n++] = values[i]!;
  if (n === 0) return Number.NaN;
  const known = room.subarray(0, n);
  const upper = selectPlace(known, n >> 1);
  if (n % 2) return upper;
  let lower = known[0]!;
  for (let i = 1; i < n / 2; i++) if (known[i]! > lower) lower = known[i]!;
  return (lower + upper) / 2;
}
