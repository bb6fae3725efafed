/** What is left out before a course is joined is said: how long it was, and how far off it was flown along meanwhile. */
import { describe, expect, it } from "vitest";
import type { CourseRecord } from "../../src/debrief/document.ts";
import { gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
const exercise = courseExercise("to", 241, "vor");
const flown = (begin: { along: number; across: number }, parts: readonly (readonly [number, number])[]) => {
  const { facts, findings } = measured(exercise, tracksOff(begin, parts));
  const record = { kind: "course", facts, findings, source: "brief" } as unknown as CourseRecord;
  const needle = gradeCourse(facts, us).find(({ criterion }) => criterion === "course-needle")!;
  return { facts, needle, words: exerciseSentence(record) };
};

describe("by construction: the time before joining", () => {
  it("on the course before a silence of the log, off it after that: what lies between is not told as a drift", () => {
    const rows = tracksOff({ along: -15, across: 0 }, [
      [12, 240],
      [-30, 100],
      [0, 330],
    ]);
    // half scale is 5 degrees: 0.9 miles there
    const off = rows.find(({ across }) => across > 1.05)!;
    const silent = rows.filter(({ t }) => t <= 15 || t >= off.t);
    expect(measured(exercise, rows).facts.beforeJoining?.drifted).toBeTruthy();
    expect(measured(exercise, silent).facts.beforeJoining?.drifted ?? null).toBeNull();
  });
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
    expect(words).toMatch(
      /The 5 min \d+ s before it was joined, at 01:05:\d\d UTC, are not judged; .* to 1\.\d\d NM right/,
    );
  });

  it.each([
    ["on the course, and then 12° off it: it cannot be told", 12, "cannot tell"],
    ["past it at 40°, and back to it from there: an intercept, and met", 40, "met"],
  ] as const)("%s", (_, off, verdict) => {
    const { facts, needle, words } = flown({ along: -15, across: 0 }, [
      [off, off === 12 ? 240 : 90],
      [-30, off === 12 ? 100 : 138],
      [0, 330],
    ]);
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.75);
    expect(needle.verdict).toBe(verdict);
    if (verdict === "met") return;
    // 1.4 miles aside, 11 before the station: its needle reaches 7 of the 10 degrees of full scale, and more as the station nears
    expect(needle.reason).toBe("drifted-before-established");
    expect(needle.partFromUtc).toBe(facts.judged.fromUtc);
    expect(words).toMatch(/in them it went from within half scale to 1\.\d\d NM right of course/);
  });

  it("a cut of two minutes is said with its length alone", () => {
    const { facts, words } = flown({ along: -15, across: -1.8 }, [
      [30, 125],
      [0, 430], // to the mile before the station
    ]);
    near(facts.beforeJoining!.seconds, 128, 8, "s");
    expect(facts.beforeJoining!.strayed).toBeNull();
    expect(words).toMatch(/The 2 min \d+ s before it was joined, at 01:02:\d\d UTC, are not judged\.$/);
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
