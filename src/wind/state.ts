/**
 * The state that a flight's facts are explained by, and how it moves on from one fact to the next.
 *
 * Wind as it walks with height (east, north), wind as it wanders with time (east, north), level of the airspeed, wander
 * of the airspeed, airspeed lost in a standard-rate turn, steady change of the wind with height (east, north, per
 * 1,000 ft: a height that is met again has its wind again).
 */
import type { Facts } from "./facts.ts";

export const N = 9;
export const LEVEL = 4;
const AIRSPEED_WANDERS = 5;

/** What is believed before the first fact, and how the two wanders fade. */
export interface Belief {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  /** Standard deviation and time constant of the wind's wander, kt and s. */
  readonly windWander: number;
  readonly windSeconds: number;
  /** Factor on the variance by which the wind changes with time. */
  readonly windUnrest: number;
  /** Of the airspeed's. */
  readonly airspeedWander: number;
  readonly airspeedSeconds: number;
}

/** What is left of each wander from the fact before i to fact i. */
function kept(
  belief: Belief,
  { seconds }: Facts,
  i: number,
): { readonly wind: number; readonly air: number } {
  const dt = seconds[i]! - seconds[i - 1]!;
  return { wind: Math.exp(-dt / belief.windSeconds), air: Math.exp(-dt / belief.airspeedSeconds) };
}

/** A state carried from the fact before i to fact i, or by the same factors back, in place. */
export function fade(belief: Belief, facts: Facts, i: number, x: Float64Array): void {
  const { wind, air } = kept(belief, facts, i);
  x[2] = x[2]! * wind;
  x[3] = x[3]! * wind;
  x[AIRSPEED_WANDERS] = x[AIRSPEED_WANDERS]! * air;
}

/** A symmetric matrix of two states carried in the same way, in place. */
export function fadeBoth(belief: Belief, facts: Facts, i: number, p: Float64Array): void {
  const { wind, air } = kept(belief, facts, i);
  for (let a = 2; a <= AIRSPEED_WANDERS; a++) {
    if (a === LEVEL) continue;
    const keep = a === AIRSPEED_WANDERS ? air : wind;
    for (let b = 0; b < N; b++) {
      p[a * N + b] = p[a * N + b]! * keep;
      p[b * N + a] = p[b * N + a]! * keep;
    }
  }
}

/** State and covariance carried on from the fact before i to fact i, in place. */
export function carry(belief: Belief, facts: Facts, i: number, x: Float64Array, p: Float64Array): void {
  fade(belief, facts, i, x);
  fadeBoth(belief, facts, i, p);
  const { wind, air } = kept(belief, facts, i);
  const walk = facts.windStep[i]!;
  const wander = belief.windUnrest * belief.windWander ** 2 * (1 - wind * wind);
  const diagonal = N + 1;
  p[0] = p[0]! + walk;
  p[diagonal] = p[diagonal]! + walk;
  p[2 * diagonal] = p[2 * diagonal]! + wander;
  p[3 * diagonal] = p[3 * diagonal]! + wander;
  p[LEVEL * diagonal] = p[LEVEL * diagonal]! + facts.levelStep[i]!;
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
