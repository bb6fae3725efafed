/** The moment that is pointed at: one signal that every drawing of a sheet reads and writes. */
import { type Signal, signal } from "@preact/signals";
import { createContext } from "preact";

/** Milliseconds of UTC, or null where nothing is pointed at. */
export type Cursor = Signal<number | null>;

export function createCursor(): Cursor {
  return signal<number | null>(null);
}

/** Of the sheet, for words that take the drawings to a moment. */
export const CursorOfSheet = createContext<Cursor | null>(null);

/** A stretch of time that is marked in all drawings, ms of UTC. */
export interface MomentSpan {
  readonly from: number;
  readonly to: number;
}

const spans = new WeakMap<Cursor, Signal<MomentSpan | null>>();

/** The stretch that is marked beside the moment pointed at. */
export function markedSpan(cursor: Cursor): Signal<MomentSpan | null> {
  const known = spans.get(cursor) ?? signal<MomentSpan | null>(null);
  spans.set(cursor, known);
  return known;
}

/**
 * The row nearest to a time, by bisection; null outside the column (more than one second before or after it)
 * or where the column has no times.
 */
export function rowAt(timeMs: Float64Array, moment: number | null): number | null {
  const n = timeMs.length;
  if (moment === null || n === 0 || !Number.isFinite(timeMs[0])) return null;
  if (moment < timeMs[0] - 1000 || moment > timeMs[n - 1] + 1000) return null;
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (timeMs[middle] <= moment) low = middle;
    else high = middle;
  }
  return moment - timeMs[low] <= timeMs[high] - moment ? low : high;
}
