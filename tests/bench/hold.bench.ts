/** How long holds take after the wind: finding them, and measuring each; at most 20 ms for 10,000 points. */
import { findHolds, measureHold } from "../../src/hold/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { HOLDING } from "../../src/standard/holding.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { bestOf, type Line } from "./time.ts";

/** The promise, for 10,000 points; a shorter log has as much. */
const MOST_MS = 20;

export default function bench(): Line[] {
  return ["hold-direct-well-flown", "hold-outbound-flown-parallel", "hour-of-training"].map((name) => {
    const { track } = fly(scenarioNamed(name, { logging: { every: 1 } }), 1);
    const motion = smoothTrack(track)!;
    const legs = findLegs(motion);
    const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
    const found = findHolds(motion, legs);
    const finding = bestOf(40, () => findHolds(motion, legs)) * 1000;
    const measuring =
      bestOf(40, () => {
        for (const hold of found)
          measureHold({ exercise: null, found: hold, motion, wind, standard: HOLDING.us });
      }) * 1000;
    const laps = found.reduce((sum, hold) => sum + hold.laps.length, 0);
    const limit = MOST_MS * Math.max(1, motion.length / 10_000);
    return {
      text: `${motion.length} points, ${laps} laps held: found in ${finding.toFixed(1)} ms, measured in ${measuring.toFixed(1)} ms; ${limit.toFixed(0)} ms promised for both`,
      ok: laps > 0 && finding + measuring < limit,
    };
  });
}
