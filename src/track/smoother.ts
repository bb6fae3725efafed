/**
 * The smoother of one run: forward, backward, and again with the jerk that the run itself showed.
 *
 * A flight is mostly straight, and now and then it rolls: one jerk density for both blurs the rolls and shakes the
 * straights. So each pass weighs every step by what the pass before showed of it (expectation-maximisation for the
 * density of each step, averaged over a few seconds and drawn toward the fitted one).
 * Source: R. H. Shumway, D. S. Stoffer, "An approach to time series smoothing and forecasting using the EM algorithm",
 * J. Time Series Analysis 3 (1982), from memory; the local average is our own.
 */
import type { AxisColumns, AxisNoise, Measured } from "./axes.ts";
import { smoothBackward } from "./backward.ts";
import { filterForward } from "./forward.ts";

/** Passes after the first. Tuned with the next two on simulation seeds 1 to 6: more passes change nothing. */
const PASSES = 2;
/** The average reaches so far to either side, s. */
const REACH = 1.5;
/** The fitted density counts like so many steps. */
const PRIOR_STEPS = 0.3;
/** A step's density over the fitted one. */
const LEAST = 0.1;
const MOST = 30;

/** Smooths one run; results stand in rows 0 to count - 1 of the columns. */
export function smoothRun(columns: AxisColumns, measured: Measured, noise: AxisNoise): void {
  columns.jerkShape.fill(1, 0, measured.count);
  for (let pass = 0; ; pass++) {
    filterForward(columns, measured, noise);
    smoothBackward(columns, measured, noise);
    if (pass === PASSES) return;
    reshape(columns, measured);
  }
}

/** The density of each step, from the jerk shown about it: an average that falls off exponentially to both sides. */
function reshape({ jerkShape, jerkShown }: AxisColumns, { seconds, count }: Measured): void {
  const sums = new Float64Array(count);
  const weights = new Float64Array(count);
  let sum = 0;
  let weight = 0;
  for (let k = 1; k < count; k++) {
    const keep = Math.exp((seconds[k - 1]! - seconds[k]!) / REACH);
    sum = sum * keep + jerkShape[k]! * jerkShown[k]!;
    weight = weight * keep + 1;
    sums[k] = sum;
    weights[k] = weight;
  }
  sum = 0;
  weight = 0;
  for (let k = count - 1; k > 0; k--) {
    const own = jerkShape[k]! * jerkShown[k]!;
    const shape = (PRIOR_STEPS + sums[k]! + sum) / (PRIOR_STEPS + weights[k]! + weight);
    jerkShape[k] = Math.min(MOST, Math.max(LEAST, shape));
    const keep = Math.exp((seconds[k - 1]! - seconds[k]!) / REACH);
    sum = (sum + own) * keep;
    weight = (weight + 1) * keep;
  }
}
