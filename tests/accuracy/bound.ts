/** The least error that any estimator could have had on a simulated flight, told its noise and the true headings. */
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { beliefOf } from "../../src/wind/belief.ts";
import { collectFacts } from "../../src/wind/collect.ts";
import { FactSmoother } from "../../src/wind/filter.ts";
import { settle } from "../../src/wind/settle.ts";
import type { Flown } from "../support/flown.ts";

/** Starts of the iteration for the most probable wind: calm, and 18 kt from four sides. */
const STARTS = [
  [0, 0],
  [18, 0],
  [-18, 0],
  [0, 18],
  [0, -18],
] as const;
const ITERATIONS = 8;

/**
 * Cramer-Rao bound (posterior form: Van Trees, *Detection, Estimation, and Modulation Theory* I, 1968, section 2.4.2)
 * of the facts, as root mean square of the wind vector over them, kt, squared: linearised at the truth, airspeed
 * constant but for its known wander, wind as simulated, no shear.
 *
 * The error is that of the estimator's own filter told the same noise, but not the headings. Both kt2.
 */
export function matched(flown: Flown): { readonly bound: number; readonly error: number } {
  const motion = smoothTrack(flown.track)!;
  const facts = collectFacts(motion, findLegs(motion), new Uint8Array(motion.length).fill(1));
  const usual = beliefOf(flown.truth.trueAirspeed[0]!, 3000);
  const belief = { ...usual, windWander: 2, windSeconds: 900, airspeedWander: 1.5, airspeedSeconds: 60 };
  belief.variance.fill(2 ** 2, 2, 4);
  belief.variance[5] = 1.5 ** 2;
  belief.mean[6] = 0;
  belief.variance.fill(1e-6, 6); // nothing lost in turns, no shear, and both are known
  const smoother = new FactSmoother(facts, belief);
  for (let i = 0; i < facts.count; i++) {
    const row = facts.row[i]!;
    const a = (flown.truth.heading[row]! * Math.PI) / 180;
    smoother.noseEast[i] = Math.sin(a);
    smoother.noseNorth[i] = Math.cos(a);
  }
  smoother.pass(belief);
  settle(smoother);
  const bound = overTime(smoother, (i) => smoother.varianceEast[i]! + smoother.varianceNorth[i]!);
  let least = Infinity;
  let error = Number.NaN;
  for (const [east, north] of STARTS) {
    smoother.startFrom(east, north);
    let cost = Infinity;
    for (let i = 0; i < ITERATIONS; i++) {
      cost = smoother.pass(belief);
      smoother.relinearise();
    }
    if (cost >= least) continue;
    least = cost;
    error = overTime(smoother, (i) => {
      const row = facts.row[i]!;
      const { airEast, airNorth } = flown.truth;
      return (smoother.windEast(i) - airEast[row]!) ** 2 + (smoother.windNorth(i) - airNorth[row]!) ** 2;
    });
  }
  return { bound, error };
}

/** Mean over the facts, each weighed by the time it stands for: they are dense in turns. */
function overTime({ facts: { seconds, count } }: FactSmoother, value: (i: number) => number): number {
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < count; i++) {
    const own = seconds[Math.min(count - 1, i + 1)]! - seconds[Math.max(0, i - 1)]!;
    sum += own * value(i);
    weight += own;
  }
  return sum / weight;
}
