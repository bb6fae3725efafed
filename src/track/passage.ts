/** When a place was passed: the first time that the aircraft was about as near to it as it ever came. */
import type { Metres } from "../quantity/units.ts";

/** A later passage that was nearer by less than this does not count: an aircraft that turns over a fix comes back to it. Chosen. */
const AS_NEAR: Metres = 500;
/** Gone away by this much, the place has been passed. Chosen: beyond the receiver's noise, short against a turn. */
const GONE: Metres = 200;

/** The row of the passage in a column of distances from the place; NaN rows are passed over. */
export function passageRow(distance: Float64Array, start: number, end: number): number {
  let nearest = start;
  for (let i = start; i < end; i++) if (!(distance[i]! >= distance[nearest]!)) nearest = i;
  let first = start;
  for (let i = start; i < nearest; i++) {
    if (distance[i]! <= distance[first]!) first = i;
    else if (distance[i]! > distance[first]! + GONE) {
      if (distance[first]! <= distance[nearest]! + AS_NEAR) return first;
      first = i;
    }
  }
  return nearest;
}
