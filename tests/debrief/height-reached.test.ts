/** A briefed altitude on exercises that begin still climbing or descending to it, flown by the simulator: what is judged of it, and what is said. */
import { describe, expect, it } from "vitest";
import type { ArcRecord, CourseRecord, HoldRecord } from "../../src/debrief/document.ts";
import { arcNotes } from "../../src/report/words/arc.ts";
import { courseNotes } from "../../src/report/words/course.ts";
import { holdNotes } from "../../src/report/words/hold.ts";
import { flyScenario, type Step, scenarioNamed } from "../../src/simulator/index.ts";
import { debriefOf } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const to = (altitude: number, rate: number): Step => ({ do: "height", altitude, rate });

/** The first exercise of a scenario begun at another height, with its steps changed; the arc too has an altitude, and a standard. */
async function flown(name: string, seed: number, altitude: number, script: readonly Step[]) {
  const { start } = scenarioNamed(name);
  const { gpx, brief } = flyScenario(name, seed, { start: { ...start, altitude }, script });
  const { document } = await debriefOf(
    gpx,
    brief!
      .replace("to_radial: 350 }", "to_radial: 350, altitude_ft: 3000 }")
      .replace("title: arc-tidy", "title: arc-tidy\nstandard: instrument-rating-us"),
  );
  return document.exercises[0]!;
}

const STEPS = scenarioNamed("calm-and-tidy").script;
/** The first course flown in two parts, the first to so many miles from its station, with steps between. */
const inTwo = (miles: number, between: Step): Step[] =>
  STEPS.flatMap((step, i) => (i === 1 ? [{ ...step, until: miles } as Step, between, step] : [step]));

type Level = CourseRecord | ArcRecord | HoldRecord;
const verdict = ({ verdicts }: Level, which: "steady" | "briefed") =>
  verdicts.find(({ criterion }) => criterion.endsWith(`height-${which}`))!;
const note = (notes: readonly (readonly [string, string | null])[]) =>
  notes.find(([title]) => title === "Height.")![1];
const secondsFrom = (name: string, utc: string | null) =>
  (Date.parse(utc!) - scenarioNamed(name).start.time) / 1000;

describe.each([1, 2, 3])("by simulation, seed %d: a briefed altitude", (seed) => {
  const course = async (altitude: number, script: readonly Step[]) =>
    (await flown("calm-and-tidy", seed, altitude, script)) as CourseRecord;

  it.each([
    ["climb", 2000, "Climbed"],
    ["descent", 6000, "Descended"],
  ] as const)(
    "of a course begun in a %s of 2,000 ft at 500 ft/min is judged from where that ended, after 240 s",
    async (way, altitude, verb) => {
      const exercise = await course(altitude, [to(4000, 500), ...STEPS]);
      const { reached } = exercise.facts!.altitude!;
      expect(reached?.way).toBe(way);
      // the last of it is soft, and arrives late
      near(secondsFrom("calm-and-tidy", reached!.utc), 240, 20, "s");
      expect(verdict(exercise, "steady")).toMatchObject({ verdict: "met", partFromUtc: reached!.utc });
      expect(verdict(exercise, "briefed").value).toBeLessThan(100);
      expect(note(courseNotes(exercise, exercise.facts!))).toMatch(
        new RegExp(
          `^${verb} from [\\d,]+ ft in the first .*; the height is judged from 01:1\\d:\\d\\d UTC on\\.$`,
        ),
      );
    },
  );

  it("climbed toward all along a course and never there cannot be told", async () => {
    const exercise = await course(500, [to(4000, 250), ...STEPS]);
    expect(exercise.facts!.altitude!.onPurpose).toBe("climb");
    for (const which of ["steady", "briefed"] as const)
      expect(verdict(exercise, which)).toMatchObject({ verdict: "cannot tell", reason: "climb-all-along" });
    expect(note(courseNotes(exercise, exercise.facts!))).toMatch(/^Climbed all along, .* not judged\.$/);
  });

  it("climbed through by 700 ft is not met", async () => {
    const exercise = await course(2500, [STEPS[0]!, to(4700, 700), ...STEPS.slice(1)]);
    expect(verdict(exercise, "briefed").verdict).toBe("not met");
    near(verdict(exercise, "briefed").value!, 700, 100, "ft"); // a height is held to some 50 ft, its 95 %
  });

  it("climbed to and lost again is not met", async () => {
    const exercise = await course(2000, [to(4000, 500), ...inTwo(6, to(4600, 500))]);
    expect(exercise.facts!.altitude!.reached?.way).toBe("climb");
    expect(verdict(exercise, "briefed").verdict).toBe("not met");
    expect(verdict(exercise, "steady").verdict).toBe("not met");
  });

  it("climbed to after minutes level at another is met by no part of it", async () => {
    const exercise = await course(3000, [to(3000, 500), ...inTwo(9, to(4000, 500))]);
    near(exercise.facts!.altitude!.reached!.level!.altitudeFt, 3000, 60, "ft");
    expect(verdict(exercise, "steady")).toMatchObject({
      verdict: "cannot tell",
      reason: "level-elsewhere-before",
    });
    expect(note(courseNotes(exercise, exercise.facts!))).toMatch(/Before that it was flown level at about/);
  });

  it("of an arc begun in the end of a descent is judged from where that ended, after 120 s from 1,000 ft above", async () => {
    const exercise = (await flown("arc-tidy", seed, 4000, [
      ...scenarioNamed("arc-tidy").script.flatMap((step) =>
        step.do === "arc" ? [to(3000, 500), step] : [step],
      ),
    ])) as ArcRecord;
    const { reached, lowestFt, highestFt } = exercise.facts!.altitude!;
    expect(reached?.way).toBe("descent");
    expect(highestFt - lowestFt).toBeLessThan(150);
    expect(verdict(exercise, "steady").verdict).toBe("met");
    expect(note(arcNotes(exercise, exercise.facts!))).toMatch(/^Descended from/);
  });

  it("of a hold descended in is judged from where that ended, and no height is said to be lost", async () => {
    const name = "hold-direct-well-flown";
    // 3,000 ft at 400 ft/min take 450 s; the fix is 9 NM away, 300 to 330 s
    const exercise = (await flown(name, seed, 7000, [
      to(4000, 400),
      ...scenarioNamed(name).script,
    ])) as HoldRecord;
    const { reached } = exercise.facts!.altitude!;
    near(secondsFrom(name, reached!.utc), 450, 25, "s");
    expect(exercise.findings.map(({ code }) => code)).not.toContain("height-not-held");
    expect(verdict(exercise, "steady").verdict).toBe("met");
    expect(note(holdNotes(exercise, exercise.facts!))).toMatch(/^Descended from/);
  });
});
