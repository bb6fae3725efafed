/** A lap that rolled out far off and homed to the fix was never established on the inbound course. Truth: the simulator's roll-outs, and its tracks. */
import { describe, expect, it } from "vitest";
import { exerciseSentence, findingSentence } from "../../src/report/index.ts";
import { flyScenario } from "../../src/simulator/index.ts";
import { debriefOf, holds } from "../support/debriefed.ts";

/** Outbound flown parallel to the course: from lap 2 on it rolls out 0.7 to 1.4 NM short of it, a mile and a half from the fix. */
async function parallel(seed: number, kind: "vor" | "waypoint") {
  const { gpx, brief, truth } = flyScenario("hold-outbound-flown-parallel", seed);
  const at = brief!.replace(/(TARNO: \{[^}]*kind: )vor/, `$1${kind}`);
  expect(at === brief).toBe(kind === "vor");
  const { document } = await debriefOf(gpx, at);
  const [exercise] = holds(document);
  const needle = exercise!.verdicts.find(({ criterion }) => criterion === "hold-needle")!;
  const off = truth.truth.holds[0]!.laps.map(({ rolloutCrossTrackNm }) => Math.abs(rolloutCrossTrackNm));
  return { exercise: exercise!, needle, off };
}

describe.each(["vor", "waypoint"] as const)("at a %s, whose needle is full at 10° (or 1 NM)", (kind) => {
  it.each([2, 5, 6, 9])("seed %s: such laps are told, and the needle is not met", async (seed) => {
    const { exercise, needle, off } = await parallel(seed, kind);
    const far = exercise.facts.laps.flatMap(({ joined }, i) => (off[i]! > 0.8 && i > 0 ? [joined] : []));
    expect(far.length).toBeGreaterThan(0);
    expect(new Set(far)).toEqual(new Set(["never"]));
    expect(needle.verdict).toBe("not met");
    const finding = exercise.findings.find(({ code }) => code === "inbound-never-established")!;
    expect(findingSentence(finding, exercise)).toMatch(
      /^Never established on the inbound course in laps? [1-4]/,
    );
    expect(exerciseSentence(exercise)).not.toMatch(/each rolled out within/);
  });
});
