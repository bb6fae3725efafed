/** The moment that is pointed at: one signal that every drawing of a sheet reads and writes. */
import { type Signal, signal } from "@preact/signals";

/** Milliseconds of UTC, or null where nothing is pointed at. */
export type Cursor = Signal<number | null>;

export function createCursor(): Cursor {
  return signal<number | null>(null);
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
