/** The least error that any estimator could have had on a simulated flight, told its noise and the true headings. */
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { beliefOf } from "../../src/wind/belief.ts";
import { collectFacts } from "../../src/wind/collect.ts";
import { FactSmoother } from "../../src/wind/filter.ts";
import { settle } from "../../src/wind/settle.ts";
import type { Flown } from "../support/flown.ts";

/**
 * Cramer-Rao bound (posterior form: Van Trees, *Detection, Estimation, and Modulation Theory* I, 1968, section 2.4.2)
 * of the facts, as root mean square of the wind vector over them, kt, squared: linearised at the truth, airspeed
 * constant but for its known wander, wind as simulated, no shear.
 */
export function boundSquared(flown: Flown): number {
  const motion = smoothTrack(flown.track)!;
  const facts = collectFacts(motion, findLegs(motion), new Uint8Array(motion.length).fill(1));
  const matched = beliefOf(flown.truth.trueAirspeed[0]!, 3000);
  const belief = { ...matched, windWander: 2, windSeconds: 900, airspeedWander: 1.5, airspeedSeconds: 60 };
  belief.variance.fill(2 ** 2, 2, 4);
  belief.variance.fill(1e-6, 6); // nothing lost in turns, no shear, and both are known
  const smoother = new FactSmoother(facts);
  for (let i = 0; i < facts.count; i++) {
    const row = facts.row[i]!;
    const a = (flown.truth.heading[row]! * Math.PI) / 180;
    smoother.noseEast[i] = Math.sin(a);
    smoother.noseNorth[i] = Math.cos(a);
  }
  smoother.pass(belief);
  settle(smoother);
  // facts are dense in turns: weigh each by the time it stands for
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < facts.count; i++) {
    const before = facts.seconds[Math.max(0, i - 1)]!;
    const after = facts.seconds[Math.min(facts.count - 1, i + 1)]!;
    sum += (after - before) * (smoother.varianceEast[i]! + smoother.varianceNorth[i]!);
    weight += after - before;
  }
  return sum / weight;
}
