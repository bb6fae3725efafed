/**
 * How gusty the air of this flight is, read from its straights.
 *
 * On a straight the ground speed should hardly change: what it does within seconds are gusts. They count against every
 * fact of the flight, turns too.
 */
import type { Knots } from "../quantity/units.ts";
import { AIRSPEED, type Facts } from "./facts.ts";

/** Variance about a line within a block of 20 s, kt2 at the usual wander, without gusts; and its growth with the variance of gusts. Tuned on simulated flights with gusts of 0, 1 and 2 kt. */
const CALM_SCATTER = 0.0514;
const GUST_SCATTER = 0.135;
/** Usual wander at 100 kt, kt. */
const USUAL = 1.7;
/** Gusts last about so long, s; a block of 20 s averages them to this share of their variance. */
const GUST_SHARE_IN_BLOCK = 0.55;
/** Samples of a turn, 5 s apart, share gusts of 8 s: n of them tell as much as n / 3.3 that did not. */
const GUST_SHARE_IN_TURN = 3.3;

/** Standard deviation of gusts in one component; 0 where none are seen. `usual`: of the airspeed's wander expected at this speed. */
export function gustOf(facts: Facts, usual: Knots): Knots {
  const scatter: number[] = [];
  for (let i = 0; i < facts.count; i++) {
    const straight = facts.kind[i] === AIRSPEED && facts.turning[i] === 0;
    if (straight && !Number.isNaN(facts.scatter[i]!)) scatter.push(facts.scatter[i]!);
  }
  scatter.sort((a, b) => a - b);
  const median = scatter[scatter.length >> 1] ?? 0;
  return Math.sqrt(Math.max(0, median - CALM_SCATTER * (usual / USUAL) ** 2) / GUST_SCATTER);
}

/** Adds the gusts to the noise of each fact. */
export function allowGusts(facts: Facts, gust: Knots): void {
  for (let i = 0; i < facts.count; i++) {
    const share = facts.turning[i]! > 0 ? GUST_SHARE_IN_TURN : GUST_SHARE_IN_BLOCK;
    if (facts.kind[i] === AIRSPEED) facts.noise[i] = facts.noise[i]! + share * gust ** 2;
  }
}
