/** Where a log is silent: between two points that lie farther apart than the log usually has them. */
import type { Seconds } from "./units.ts";
import { median } from "./weigh.ts";

/** Shorter silences are a receiver's breathing. Tuned, no source. */
const LEAST: Seconds = 15;
/** Times the log's usual interval. Tuned, no source. */
const OF_USUAL = 5;

/** Steps longer than this are a silence: 15 s, and five times the usual one. `steps`: times between neighbours. */
export const silenceLimit = (steps: Float64Array): Seconds =>
  Math.max(LEAST, OF_USUAL * (median(steps) || 0));

/** The steps of a rising column of seconds: one fewer than it has rows. */
export const stepsOf = (clock: Float64Array): Float64Array =>
  clock.subarray(1).map((at, i) => at - clock[i]!);

/** The length of the silence that ends at a row; null where the step to it is none. */
export type SilentBefore = (row: number) => Seconds | null;

/** The silences of a rising column of seconds. */
export function silencesOf(clock: Float64Array): SilentBefore {
  const limit = silenceLimit(stepsOf(clock));
  return (row) => {
    const seconds = row > 0 && row < clock.length ? clock[row]! - clock[row - 1]! : 0;
    return seconds > limit ? seconds : null;
  };
}

/** The longest silence between two rows; 0 where there is none. */
export function longestSilence(silentBefore: SilentBefore, from: number, to: number): Seconds {
  let longest = 0;
  for (let row = from + 1; row <= to; row++) longest = Math.max(longest, silentBefore(row) ?? 0);
  return longest;
}
