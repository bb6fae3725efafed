/** Smoothing, legs and wind of long flights: at most 100 ms for 10,000 points, and no more than in proportion beyond. */
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { trainingHour } from "../accuracy/scenarios.ts";
import { fly, seeded } from "../support/flown.ts";
import { bestOf, type Line } from "./time.ts";

const LIMIT_SECONDS = 0.1;

export default function bench(): Line[] {
  const lines: Line[] = [];
  for (const hours of [1, 3, 28]) {
    const random = seeded(4).uniform;
    const { track } = fly({
      seed: 4,
      steps: Array.from({ length: hours }, () => trainingHour(random)).flat(),
    });
    const motion = smoothTrack(track)!;
    const legs = findLegs(motion);
    const smooth = bestOf(5, () => smoothTrack(track));
    const cut = bestOf(5, () => findLegs(motion));
    const wind = bestOf(5, () => estimateWind(motion, legs, { airspeed: null, winds: [] }));
    const limit = (LIMIT_SECONDS * track.length) / 10_000;
    const ms = (s: number) => `${(s * 1000).toFixed(1)} ms`;
    lines.push({
      text: `${track.length} points: smoothing ${ms(smooth)}, legs ${ms(cut)}, wind ${ms(wind)}`,
      ok: smooth + cut + wind <= Math.max(limit, LIMIT_SECONDS),
    });
  }
  return lines;
}
