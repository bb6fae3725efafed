/** What is left out before a course is joined is said: how long it was, and how far off it was flown along meanwhile. */
import { describe, expect, it } from "vitest";
import type { CourseRecord } from "../../src/debrief/document.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const exercise = courseExercise("to", 241, "vor");
const flown = (begin: { along: number; across: number }, parts: readonly (readonly [number, number])[]) => {
  const { facts, findings } = measured(exercise, tracksOff(begin, parts));
  const record = { kind: "course", facts, findings, source: "brief" } as unknown as CourseRecord;
  return { facts, words: exerciseSentence(record) };
};

describe("by construction: the time before joining", () => {
  it("a drift from the course on, regained after minutes: not judged, and said with its length", () => {
    // 12 degrees off for four minutes from the first second on: never established before it came back
    const { facts, words } = flown({ along: -15, across: 0 }, [
      [12, 240],
      [-30, 100],
      [0, 60],
    ]);
    near(facts.beforeJoining!.seconds, 348, 8, "s");
    // 100 kt for 240 s, times the sine of 12 degrees: 1.4 miles, where full scale is 10 degrees of 8.5 miles
    expect(facts.beforeJoining!.strayed!.crossTrackNm).toBeGreaterThan(1.2);
    expect(words).toMatch(/The 5 min \d+ s before it was joined are not judged; .* up to 1\.\d\d NM right/);
  });

  it("a cut of two minutes is said with its length alone", () => {
    const { facts, words } = flown({ along: -15, across: -1.8 }, [
      [30, 125],
      [0, 430], // to the mile before the station
    ]);
    near(facts.beforeJoining!.seconds, 128, 8, "s");
    expect(facts.beforeJoining!.strayed).toBeNull();
    expect(words).toMatch(/The 2 min \d+ s before it was joined are not judged\.$/);
  });

  it("a short cut is not spoken of, nor a course that is judged from its beginning", () => {
    const cut = flown({ along: -15, across: -0.5 }, [
      [30, 35],
      [0, 200],
    ]);
    const along = flown({ along: -15, across: 0 }, [[0, 200]]);
    for (const { facts, words } of [cut, along]) {
      expect(facts.beforeJoining).toBeUndefined();
      expect(words).not.toContain("not judged");
    }
  });

  it("a drift after being established is judged, and nothing of it is left out", () => {
    const { facts } = flown({ along: -15, across: 0 }, [
      [0, 30],
      [12, 240],
      [-30, 140],
      [0, 60],
    ]);
    expect(facts.beforeJoining).toBeUndefined();
    expect(facts.crossTrack.maxNm).toBeGreaterThan(1.2);
  });
});

it("an intercept with the log silent before it was joined says so", () => {
  const rows = tracksOff({ along: -15, across: -1.8 }, [
    [30, 125],
    [0, 200],
  ]);
  const seen = measured(exercise, rows).facts.intercept!;
  expect(seen.silentS).toBeUndefined();
  const { intercept } = measured(
    exercise,
    rows.filter(({ t }) => t < 100 || t > 150),
  ).facts;
  near(intercept!.silentS!, 51, 1.5, "s");
});
