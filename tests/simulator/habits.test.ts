/** How courses are flown: the truth says what the script asked for. */
import { describe, expect, it } from "vitest";
import { fly } from "../../src/simulator/index.ts";
import type { Scenario } from "../../src/simulator/scenario.ts";
import type { CourseStep, Habit } from "../../src/simulator/script.ts";
import { near } from "../support/near.ts";
import { blowing, STILL } from "./still.ts";

const course = (flown: Habit, change: Partial<CourseStep> = {}): CourseStep => ({
  do: "course",
  form: "from",
  fix: STILL.start.position,
  course: 90,
  until: 20,
  cut: 30,
  scale: "rnav-1",
  flown,
  exercise: "course",
  ...change,
});
const tidy: Habit = { habit: "tidy", share: 1, delay: 0 };
const flyOne = (step: CourseStep, change: Partial<Scenario> = {}, seed = 1) => {
  const { truth, columns } = fly({ ...STILL, wind: blowing(0, 20), script: [step], ...change }, seed);
  return { exercise: truth.truth.exercises[0]!, columns };
};

describe("by construction: habits of the pilot", () => {
  it("keeps a course within 0.05 NM when tidy, with the correction that the wind needs", () => {
    const { exercise } = flyOne(course(tidy));
    near(exercise.maxCrossTrackNm, 0, 0.05, "NM");
    near(exercise.neededCorrectionDeg, -11.54, 0.06, "deg"); // asin(20 / 100)
    near(exercise.flownCorrectionDeg, exercise.neededCorrectionDeg, 0.3, "deg");
  });

  it("lets the correction go, and corrects only when the needle shows the share named", () => {
    const habit: Habit = {
      habit: "waits",
      tidyFor: 60,
      share: 0,
      correctsAt: 0.5,
      cut: 20,
      thenShare: 1,
    };
    const { exercise } = flyOne(course(habit));
    expect(exercise.events.map((e) => e.code)).toEqual([
      "established",
      "wind-correction-let-go",
      "corrected",
      "back-on-course",
    ]);
    const [, letGo, corrected] = exercise.events;
    near(letGo!.trackErrorDeg, 11.31, 0.2, "deg"); // atan(20 / 100): wind square to the heading
    expect(Date.parse(letGo!.quarterUtc!)).toBeLessThan(Date.parse(corrected!.utc));
    expect(exercise.maxCrossTrackNm).toBeGreaterThan(0.5);
    expect(exercise.maxCrossTrackNm).toBeLessThan(0.7);
  });

  it("tells a correction overdone from one let go", () => {
    const habit: Habit = { habit: "waits", tidyFor: 60, share: 2, correctsAt: 0.5, cut: 20, thenShare: 1 };
    const { exercise } = flyOne(course(habit));
    expect(exercise.events[1]!.code).toBe("wind-correction-overdone");
    expect(exercise.events[1]!.trackErrorDeg).toBeLessThan(-8);
  });

  it.each([35, 45, 60])("chases the needle with a period near %d s", (period) => {
    const habit: Habit = { habit: "chases", share: 1, period, cut: 14 };
    const { exercise } = flyOne(course(habit), { wind: blowing(0, 5) });
    const times = exercise.events.filter((e) => e.code === "needle-reversal").map((e) => Date.parse(e.utc));
    expect(times.length).toBeGreaterThan(10);
    const mean = (times.at(-1)! - times[0]!) / 1000 / (times.length - 1);
    near(2 * mean, period, 0.25 * period, "s"); // a habit, not a clock
  });

  it("joins from the side with no more than the angle named, and hardly overshoots", () => {
    const north = { latitude: 35.65, longitude: 172.3 };
    const { exercise, columns } = flyOne(course(tidy, { cut: 30 }), {
      wind: blowing(0, 0),
      start: { ...STILL.start, position: north },
    });
    expect(Math.max(...columns.heading)).toBeLessThan(122); // a turn overshoots a little
    expect(exercise.establishedUtc).not.toBeNull();
    near(exercise.maxCrossTrackNm, 0, 0.09, "NM"); // established within 150 m
  });

  it("says that a course was never established", () => {
    const away = { latitude: 36.6, longitude: 172.3 };
    const { exercise } = flyOne(course(tidy, { until: 5 }), { start: { ...STILL.start, position: away } });
    expect(exercise.establishedUtc).toBeNull();
    expect(exercise.maxCrossTrackNm).toBe(0);
  });
});
