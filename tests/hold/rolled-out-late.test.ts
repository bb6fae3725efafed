/** A hold of the brief is found whatever habit its pilot has: one who rolls out of left turns late comes back to each outbound heading. Truth: the simulator's. */
import { expect, it } from "vitest";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { holdAgainst } from "../../src/hold/index.ts";
import { fly, PILOTS, type PilotName, pilotLesson } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";

const SEEDS = Array.from({ length: 16 }, (_, i) => 5301 + i);
/** Seeds of the pilots lie apart, so that no two fly in the same air. */
const APART = 100_000;

function lapsFound(pilot: PilotName, seed: number): { readonly found: number; readonly flown: number } {
  const day = seed + APART * PILOTS.indexOf(pilot);
  const scenario = pilotLesson(pilot, day, day % 2 ? "left" : "right");
  const { track, truth } = fly(scenario, day);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
  const hold = brief.exercises.find(({ kind }) => kind === "hold");
  if (hold?.kind !== "hold") throw new Error("a lesson without a hold");
  const motion = smoothTrack(track)!;
  const { fix, course, turns } = hold;
  const found = holdAgainst(motion, findLegs(motion), { fix, inbound: course.azimuth, turns });
  return {
    found: found?.turns === turns ? found.laps.length : 0,
    flown: truth.truth.holds[0]!.laps.length,
  };
}

it.each(["rolls-out-late-to-the-left", "no-habit"] as const)("%s: every hold, with its laps", (pilot) => {
  const missed = SEEDS.filter((seed) => {
    const { found, flown } = lapsFound(pilot, seed);
    return found !== flown;
  });
  expect(missed).toEqual([]);
});
