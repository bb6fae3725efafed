/**
 * How restless the air and the airspeed of this flight are, read from its straights; calmer than usual is not believed.
 *
 * On a straight the ground speed should hardly change. What it does within seconds are gusts; what it does from one
 * block to the next but one is airspeed that wanders. Both count against every fact of the flight, turns too.
 */
import { AIRSPEED, type Facts, speedOf } from "./facts.ts";

export interface Unrest {
  /** Standard deviation of gusts in one component, kt; 0 where none are seen. */
  readonly gust: number;
  /** Factor on the standard deviation of the airspeed's wander, 1 or more. */
  readonly wander: number;
}

/** Variance about a line within a block of 20 s, kt2 at the usual wander of 100 kt, without gusts; and its growth with the variance of gusts. Tuned on simulated flights with gusts of 0, 1 and 2 kt. */
const CALM_SCATTER = 0.04;
const GUST_SCATTER = 0.135;
/** Wind that wanders makes the differences of blocks larger than airspeed alone. Tuned on simulated flights. */
const WIND_SHARE = 1.25;
/** The usual wander weighs as much as so many differences of blocks. */
const USUAL_WEIGHT = 10;
/** Where a change of speed of this variance, kt2 at the usual wander of 100 kt, is allowed anyway, it is not wander. */
const CHANGED = 25;
/** Median of the square of a standard normal deviate. */
const MEDIAN_SQUARE = 0.4549;
/** Gusts last about so long, s; a block of 20 s averages them to this share of their variance. */
const GUST_SHARE_IN_BLOCK = 0.55;
/** Samples of a turn, 5 s apart, share gusts of 8 s: n of them tell as much as n / 3.3 that did not. */
const GUST_SHARE_IN_TURN = 3.3;

/** Call after the steps are set: changes of speed that they allow are left out. `usual`: standard deviation of the airspeed's wander expected at this speed, kt. */
export function unrestOf(facts: Facts, usual: number): Unrest {
  const scatter: number[] = [];
  const squares: number[] = [];
  const straight = (i: number) => facts.kind[i] === AIRSPEED && facts.turning[i] === 0;
  for (let i = 0; i < facts.count; i++) {
    if (straight(i) && !Number.isNaN(facts.scatter[i]!)) scatter.push(facts.scatter[i]!);
  }
  const calm = CALM_SCATTER * (usual / 1.5) ** 2;
  const gust = Math.sqrt(Math.max(0, (median(scatter) || 0) - calm) / GUST_SCATTER);
  for (let i = 0; i < facts.count; i++) {
    if (!straight(i)) continue;
    const j = i + 2;
    if (
      j < facts.count &&
      facts.leg[j] === facts.leg[i] &&
      stepsTo(facts, i, j) < CHANGED * (usual / 1.5) ** 2
    ) {
      const gap = facts.seconds[j]! - facts.seconds[i]!;
      // variance of the difference of two means of a Gauss-Markov wander of 60 s
      const own = 2 * (usual * facts.wanderShare[i]!) ** 2 * (1 - Math.exp(-gap / 60));
      const expected = WIND_SHARE * own + 2 * GUST_SHARE_IN_BLOCK * gust ** 2;
      squares.push((speedOf(facts, j) - speedOf(facts, i)) ** 2 / expected);
    }
  }
  const n = squares.length;
  const ratio = n > 0 ? median(squares) / MEDIAN_SQUARE : 1;
  const wander = Math.sqrt(Math.max(1, (USUAL_WEIGHT + n * ratio) / (USUAL_WEIGHT + n)));
  return { gust, wander };
}

/** Variance of the airspeed level already allowed between two facts. */
function stepsTo(facts: Facts, i: number, j: number): number {
  let sum = 0;
  for (let s = i + 1; s <= j; s++) sum += facts.levelStep[s]!;
  return sum;
}

/** Adds the gusts to the noise of each fact. */
export function allowGusts(facts: Facts, gust: number): void {
  for (let i = 0; i < facts.count; i++) {
    const share = facts.turning[i]! > 0 ? GUST_SHARE_IN_TURN : GUST_SHARE_IN_BLOCK;
    if (facts.kind[i] === AIRSPEED) facts.noise[i] = facts.noise[i]! + share * gust ** 2;
  }
}

function median(values: number[]): number {
  if (values.length === 0) return Number.NaN;
  values.sort((a, b) => a - b);
  return values[values.length >> 1]!;
}
