/** Chasing the needle: the same count on courses and on finals. */
import type { Seconds } from "../quantity/units.ts";
import type { Measured } from "./tendency.ts";

/** A count is known to one or so, the more so where it is 0 (the square root of a count of 1, twice). */
const COUNT_95 = 2;

export const chasedPerMinute = (perMinute: number, judged: Seconds | null): Measured => ({
  value: perMinute,
  doubt95: (60 * COUNT_95) / Math.max(60, judged ?? 0),
});
