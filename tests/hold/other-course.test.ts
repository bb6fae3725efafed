/** Holds flown on another inbound course than the one of the brief. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import type { HoldFacts } from "../../src/debrief/document.ts";
import { type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { observeFlight } from "../../src/habit/index.ts";
import { exerciseSentence, readBrief } from "../../src/index.ts";
import { fly, type Step, scenarioNamed } from "../../src/simulator/index.ts";

const NAME = "hold-direct-well-flown";
const SEEDS = [5201, 5202, 5203];

/** The hold of the sample, flown on an inbound course so far to the right of the one that its brief gives, degrees; of several each for a lap. */
function flown(off: number | readonly number[], seed: number) {
  const base = scenarioNamed(NAME);
  const script = base.script.flatMap((step): Step[] => {
    if (step.do !== "hold") return [step];
    if (typeof off === "number") return [{ ...step, inbound: step.inbound + off }];
    return off.map((one) => ({ ...step, inbound: step.inbound + one, laps: 1 }));
  });
  const { track } = fly({ ...base, script }, seed);
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  const { document } = debriefFlight({
    log: { ...log, ...more } as unknown as DebriefInput["log"],
    brief: readBrief(base.brief!, "brief.yaml"),
  });
  const [exercise] = document.exercises;
  const needle = exercise!.verdicts.find(({ criterion }) => criterion === "hold-needle");
  return { document, exercise: exercise!, facts: exercise!.facts as HoldFacts, needle };
}

describe.each([-15, 15])("flown %i degrees to the right of the published inbound course", (off) => {
  it.each(SEEDS)("seed %i: it is said first, within its doubt, and the needle is not met", (seed) => {
    const { document, exercise, facts, needle } = flown(off, seed);
    const { inboundOffDeg, inbound95Deg = 0, otherCourse } = facts.asFlown!;
    expect(otherCourse).toBe(true);
    expect(Math.abs(inboundOffDeg - off)).toBeLessThanOrEqual(inbound95Deg + 0.5);
    expect(exercise.findings[0]?.code).toBe("other-inbound-course");
    expect(exerciseSentence(exercise)).toMatch(/^The inbound legs were flown on .* of this hold’s 247°M\.$/);
    // 15 degrees are one and a half of the full scale of a VOR (FAA AIM 1-1-4 and 1-1-9: 10 degrees)
    expect(needle?.verdict).toBe("not met");
    expect(Math.abs(needle!.value! - 1.5)).toBeLessThan(0.5);
    const told = observeFlight(document, { id: "a" }).observations.map(({ tendency }) => tendency);
    expect(told.filter((id) => /^hold-(in|out)bound|^roll-out-past/.test(id))).toEqual([]);
  });
});

it.each(SEEDS)("seed %i, flown on its own course: nothing of the kind", (seed) => {
  const { exercise, facts } = flown(0, seed);
  expect(facts.asFlown!.otherCourse).toBe(false);
  expect(exercise.findings.map(({ code }) => code)).not.toContain("other-inbound-course");
});

it.each(SEEDS)(
  "seed %i, two of three laps on another course: said of these, and what the other one came on",
  (seed) => {
    for (const [offs, laps, other] of [
      [[15, 15, 0], "1 and 2", 3],
      [[0, 15, 15], "2 and 3", 1],
    ] as const) {
      const { exercise, facts } = flown(offs, seed);
      const [said] = exercise.findings;
      const told = new RegExp(
        `^In laps ${laps} the inbound leg was flown on 2\\d\\d°M \\(± \\d°\\), \\d+° right of this hold’s 247°M; lap ${other} came in on 24\\d°M\\.$`,
      );
      expect(exerciseSentence(exercise)).toMatch(told);
      expect(Math.abs(Number(said!.facts.othersFromTrueDeg) - facts.inboundTrueDeg)).toBeLessThan(5);
    }
  },
);
