/** A mean that a single odd exercise does not carry off, with the interval that flights, not exercises, give it. */

import type { Share } from "../quantity/units.ts";
import { median, Z95 } from "../quantity/weigh.ts";
import { clusterBootstrap, standardError } from "./bootstrap.ts";
import { studentBeyond, studentWithin } from "./student.ts";

/** Values farther than so many standard deviations count less. Huber's: 95 % as efficient as the mean where errors are normal (Holland, Welsch 1977). */
const TUNING = 1.345;
/** Of the median absolute deviation of a normal deviate. */
const PER_DEVIATION = 1.4826;
/** Values in tolerances within 1 of the mean are never odd, however near the others lie: most of a pilot's chases may be 0 and the rest still count. Chosen. */
const NEVER_ODD_WITHIN = 1;
/**
 * A fault that shows on few flights and then much may show on the next, however clean those so far: one more flight may
 * be off by so many tolerances. Chosen: a quarter, what is small; tuned on simulation seeds 1-300.
 */
const RARE = 0.25;
const MOST_STEPS = 50;
const NEAR_ENOUGH = 1e-6;

/** The spread that the mean is robust against: the median absolute deviation, as a standard deviation. */
export function robustSpread(values: Float64Array): number {
  const middle = median(values);
  return PER_DEVIATION * median(values.map((v) => Math.abs(v - middle)));
}

/**
 * Huber's M-estimate of location, by reweighting, for a spread known beforehand; the plain mean where that is 0.
 * Source: P. J. Huber, *Robust Estimation of a Location Parameter*, Ann. Math. Statist. 35 (1964) 73-101.
 */
export function huberMean(values: Float64Array, spread: number, start = median(values)): number {
  if (!(spread > 0)) return values.reduce((a, b) => a + b, 0) / values.length;
  const reach = TUNING * spread;
  let mean = start;
  for (let step = 0; step < MOST_STEPS; step++) {
    let sum = 0;
    let weights = 0;
    for (let i = 0; i < values.length; i++) {
      const off = Math.abs(values[i]! - mean);
      const weight = off <= reach ? 1 : reach / off;
      sum += weight * values[i]!;
      weights += weight;
    }
    const next = sum / weights;
    if (Math.abs(next - mean) <= NEAR_ENOUGH * spread) return next;
    mean = next;
  }
  return mean;
}

export interface RobustMean {
  readonly mean: number;
  /** Of the mean, from flight to flight. */
  readonly standardError: number;
  /** The 95 % interval. */
  readonly low95: number;
  readonly high95: number;
  readonly degreesOfFreedom: number;
}

/** A value with the half-width of its own 95 % interval. */
export interface Doubted {
  readonly value: number;
  readonly doubt95: number;
}

/**
 * The robust mean of exercises, in tolerances, that come in flights. Exercises of one flight have its wind, its aircraft
 * and the pilot's day in common, so whole flights are drawn: the standard error is the bootstrap's over flights, widened
 * by sqrt(n / (n - 1)) because a bootstrap of n is too narrow by that, and the interval is Student's with n - 1 degrees
 * of freedom. It is never taken for less than what the doubt of the values themselves makes: five counts of 0 are not
 * known to the last digit. `rare`: the figure is mostly 0 and seldom much, as a fault is that is counted on one side only.
 * The spread is taken anew of each draw, because the mean of values that come in two sorts moves with it. Source: T. C. Hesterberg, *What Teachers Should Know About the Bootstrap*, The American
 * Statistician 69 (2015) 371-386, sections 3.2 and 4.2 (from memory).
 * @throws RangeError with fewer than two flights: nothing tells then how they differ.
 */
export function robustMean(flights: readonly (readonly Doubted[])[], rare = false): RobustMean {
  const n = flights.length;
  if (n < 2) throw new RangeError(`invalid flights: ${n}; an interval needs two`);
  const clusters = flights.map((flight) => flight.map(({ value }) => value));
  const values = Float64Array.from(clusters.flat());
  const spreadOf = (sample: Float64Array) => Math.max(robustSpread(sample), NEVER_ODD_WITHIN / TUNING);
  const mean = huberMean(values, spreadOf(values));
  const drawn = clusterBootstrap(clusters, (sample) => huberMean(sample, spreadOf(sample), mean));
  const own = Math.hypot(...flights.flat().map(({ doubt95 }) => doubt95 / Z95)) / values.length;
  const error = Math.max(standardError(drawn) * Math.sqrt(n / (n - 1)), own, rare ? RARE / n : 0);
  const half = studentBeyond(0.05, n - 1) * error;
  return {
    mean,
    standardError: error,
    low95: mean - half,
    high95: mean + half,
    degreesOfFreedom: n - 1,
  };
}

/** The chance of a mean so far out, were the true one at the edge of -edge to +edge. */
export function chanceBeyond({ mean, standardError, degreesOfFreedom }: RobustMean, edge: number): Share {
  const tail = (distance: number): Share => {
    if (!(standardError > 0)) return distance > 0 ? 0 : 1;
    const half = (1 - studentWithin(Math.abs(distance) / standardError, degreesOfFreedom)) / 2;
    return distance > 0 ? half : 1 - half;
  };
  return Math.min(1, tail(Math.abs(mean) - edge) + tail(Math.abs(mean) + edge));
}
