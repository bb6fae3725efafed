/**
 * The state that a flight's facts are explained by, and how it moves on from one fact to the next.
 *
 * Wind as it walks with height (east, north), wind as it wanders with time (east, north), level of the airspeed, wander
 * of the airspeed, airspeed lost in a standard-rate turn, steady change of the wind with height (east, north, per
 * 1,000 ft: a height that is met again has its wind again), and of the airspeed besides its growth at a held indicated one.
 */
import type { Facts } from "./facts.ts";

export const N = 10;
export const LEVEL = 4;
const AIRSPEED_WANDERS = 5;
export const AIRSPEED_SHEARS = 9;
/** A copy at hand for the inner loops: looking up an exported value there costs time. */
const W: number = N;

/** What is believed before the first fact, and how the two wanders fade. */
export interface Belief {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  /** Standard deviation and time constant of the wind's wander, kt and s. */
  readonly windWander: number;
  readonly windSeconds: number;
  /** Factors on the variance by which the wind changes with time, and with height. */
  readonly windUnrest: number;
  readonly heightUnrest: number;
  /** Of the airspeed's by climbs and descents. */
  readonly climbUnrest: number;
  /** Chance that the airspeed is changed in a turn. */
  readonly hiddenChange: number;
  /** Of the airspeed's. */
  readonly airspeedWander: number;
  readonly airspeedSeconds: number;
}

/** What is left of each wander from the fact before to each fact: of the wind's, and of the airspeed's. */
export interface Kept {
  readonly wind: Float64Array;
  readonly air: Float64Array;
}

export function keptOf({ windSeconds, airspeedSeconds }: Belief, { count, seconds }: Facts): Kept {
  const wind = new Float64Array(count);
  const air = new Float64Array(count);
  for (let i = 1; i < count; i++) {
    const dt = seconds[i]! - seconds[i - 1]!;
    wind[i] = Math.exp(-dt / windSeconds);
    air[i] = Math.exp(-dt / airspeedSeconds);
  }
  return { wind, air };
}

/**
 * Variance by which each component of the wind changes with height in the step before fact i, kt2. Far from the middle
 * height the flight cannot tell that it is calm: what a long climb shows of it is taken for changes of airspeed.
 */
export const walkWithHeight = ({ heightUnrest }: Belief, { windStep, farStep }: Facts, i: number): number =>
  heightUnrest * windStep[i]! + Math.max(1, heightUnrest) * farStep[i]!;

/** A state carried from the fact before i to fact i, or by the same factors back, in place. */
export function fade(kept: Kept, i: number, x: Float64Array): void {
  const wind = kept.wind[i]!;
  x[2] = x[2]! * wind;
  x[3] = x[3]! * wind;
  x[AIRSPEED_WANDERS] = x[AIRSPEED_WANDERS]! * kept.air[i]!;
}

/** A symmetric matrix of two states carried in the same way, in place. */
export function fadeBoth(kept: Kept, i: number, p: Float64Array): void {
  const wind = kept.wind[i]!;
  const air = kept.air[i]!;
  for (let b = 0; b < W; b++) {
    const row = b * W;
    p[row + 2] = p[row + 2]! * wind;
    p[row + 3] = p[row + 3]! * wind;
    p[row + AIRSPEED_WANDERS] = p[row + AIRSPEED_WANDERS]! * air;
  }
  for (let b = 0; b < W; b++) {
    p[2 * W + b] = p[2 * W + b]! * wind;
    p[3 * W + b] = p[3 * W + b]! * wind;
    p[AIRSPEED_WANDERS * W + b] = p[AIRSPEED_WANDERS * W + b]! * air;
  }
}

/** State and covariance carried on from the fact before i to fact i, in place. */
export function carry(
  belief: Belief,
  kept: Kept,
  facts: Facts,
  i: number,
  x: Float64Array,
  p: Float64Array,
): void {
  fade(kept, i, x);
  fadeBoth(kept, i, p);
  const wind = kept.wind[i]!;
  const air = kept.air[i]!;
  const walk = walkWithHeight(belief, facts, i);
  const wander = belief.windUnrest * belief.windWander ** 2 * (1 - wind * wind);
  const diagonal = W + 1;
  p[0] = p[0]! + walk;
  p[diagonal] = p[diagonal]! + walk;
  p[2 * diagonal] = p[2 * diagonal]! + wander;
  p[3 * diagonal] = p[3 * diagonal]! + wander;
  p[LEVEL * diagonal] = p[LEVEL * diagonal]! + facts.levelStep[i]! + belief.climbUnrest * facts.climbStep[i]!;
  const own = AIRSPEED_WANDERS * diagonal;
  p[own] = p[own]! + belief.airspeedWander ** 2 * (1 - air * air);
}

/** Covariance before the first fact. */
export function firstCovariance(belief: Belief): Float64Array {
  const p = new Float64Array(N * N);
  for (let a = 0; a < N; a++) p[a * N + a] = belief.variance[a]!;
  for (const a of [2, 3]) p[a * N + a] = p[a * N + a]! * belief.windUnrest;
  return p;
}
