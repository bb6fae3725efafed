/** The least error that any estimator could have had on a simulated flight, told its noise, the true headings, and when the airspeed was changed. */
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { beliefOf } from "../../src/wind/belief.ts";
import { collectFacts } from "../../src/wind/collect.ts";
import { FactSmoother } from "../../src/wind/filter.ts";
import { settle } from "../../src/wind/settle.ts";
import type { Belief } from "../../src/wind/state.ts";
import type { Flown } from "../support/flown.ts";
import { meanBound } from "./mean-bound.ts";

/** Starts of the iteration for the most probable wind: calm, and 18 kt from four sides. */
const STARTS = [
  [0, 0],
  [18, 0],
  [-18, 0],
  [0, 18],
  [0, -18],
] as const;
const ITERATIONS = 8;

export interface Bound {
  /** Of the wind vector over the flight, mean square. */
  readonly bound: number;
  readonly error: number;
  /** Of the mean wind of the flight, square of the vector. */
  readonly meanBound: number;
  readonly meanError: number;
}

/**
 * Cramer-Rao bound (posterior form: Van Trees, *Detection, Estimation, and Modulation Theory* I, 1968, section 2.4.2)
 * of the facts, linearised at the truth: wind as simulated, airspeed steady but for its known wander and for changes
 * whose moments and sizes are known, though not their signs. `shear` is the simulator's, kt per 1,000 ft, rms of the
 * vector.
 *
 * The errors are those of the estimator's own filter told the same, but not the headings. All kt2.
 */
export function matched(flown: Flown, shear = 0): Bound {
  const { truth } = flown;
  const motion = smoothTrack(flown.track)!;
  const facts = collectFacts(motion, findLegs(motion), new Uint8Array(motion.length).fill(1));
  const belief = told(truth.level[0]!, shear);
  facts.growth.fill(1); // the simulator's changes of true airspeed with height are in its level
  for (let i = 1; i < facts.count; i++) {
    facts.levelStep[i] = (truth.level[facts.row[i]!]! - truth.level[facts.row[i - 1]!]!) ** 2;
  }
  const smoother = new FactSmoother(facts, belief);
  for (let i = 0; i < facts.count; i++) {
    const a = (truth.heading[facts.row[i]!]! * Math.PI) / 180;
    smoother.noseEast[i] = Math.sin(a);
    smoother.noseNorth[i] = Math.cos(a);
  }
  const weights = shares(facts.seconds, facts.count);
  const mean = meanBound(smoother, belief, weights);
  smoother.pass(belief);
  settle(smoother);
  const over = (value: (i: number) => number) => weights.reduce((sum, w, i) => sum + w * value(i), 0);
  const bound = over((i) => smoother.varianceEast[i]! + smoother.varianceNorth[i]!);
  let least = Infinity;
  let error = Number.NaN;
  let meanError = Number.NaN;
  for (const [east, north] of STARTS) {
    smoother.startFrom(east, north);
    let cost = Infinity;
    for (let i = 0; i < ITERATIONS; i++) {
      cost = smoother.pass(belief);
      smoother.relinearise();
    }
    if (cost >= least) continue;
    least = cost;
    const offEast = (i: number) => smoother.windEast(i) - truth.airEast[facts.row[i]!]!;
    const offNorth = (i: number) => smoother.windNorth(i) - truth.airNorth[facts.row[i]!]!;
    error = over((i) => offEast(i) ** 2 + offNorth(i) ** 2);
    meanError = over(offEast) ** 2 + over(offNorth) ** 2;
  }
  return { bound, error, meanBound: mean, meanError };
}

/** The simulator's own noise as a belief: wind 2 kt over 900 s, airspeed 1.5 kt over 60 s, nothing lost in turns. */
function told(airspeed: number, shear: number): Belief {
  const usual = beliefOf(airspeed, 3000);
  const belief = { ...usual, windWander: 2, windSeconds: 900, airspeedWander: 1.5, airspeedSeconds: 60 };
  belief.variance.fill(2 ** 2, 2, 4);
  belief.variance[5] = 1.5 ** 2;
  belief.mean[6] = 0;
  belief.variance[6] = 1e-6;
  belief.variance.fill(Math.max(1e-6, shear ** 2 / 2), 7, 9);
  belief.mean[9] = 0;
  belief.variance[9] = 1e-6;
  return belief;
}

/** Of the flight's time, the share that each fact stands for: they are dense in turns. */
function shares(seconds: Float64Array, count: number): number[] {
  const own = Array.from(
    { length: count },
    (_, i) => seconds[Math.min(count - 1, i + 1)]! - seconds[Math.max(0, i - 1)]!,
  );
  const all = own.reduce((sum, v) => sum + v, 0);
  return own.map((v) => v / all);
}
