/** How long an approach takes after the wind: finding it, and measuring it. */
import { findApproaches, measureApproach } from "../../src/approach/index.ts";
import { fly, SCENARIOS } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { bestOf, type Line } from "./time.ts";

/** The promise, ms a flight. */
const MOST_MS = 10;

export default function bench(): Line[] {
  const { track } = fly(SCENARIOS["hour-of-training"]!, 1);
  const motion = smoothTrack(track)!;
  const wind = estimateWind(motion, findLegs(motion), { airspeed: null, winds: [] });
  const threshold = { latitude: 35.672, longitude: 172.395 };
  const end = { latitude: 35.66189, longitude: 172.38401 };
  const runway = { ident: "22", threshold, end, elevation: 420 };
  const found = findApproaches(motion, [runway]);
  const finding = bestOf(10, () => findApproaches(motion, [runway]));
  const measuring = bestOf(10, () => {
    for (const { exercise, span } of found) measureApproach({ exercise, path: motion, span, motion, wind });
  });
  const ms = (finding + measuring) * 1000;
  return [
    {
      text: `${motion.length} points, ${found.length} approaches: found in ${(finding * 1000).toFixed(1)} ms, measured in ${(measuring * 1000).toFixed(1)} ms; ${MOST_MS} ms promised for both`,
      ok: found.length > 0 && ms < MOST_MS,
    },
  ];
}
