/** A course flown by ruler in a time that the brief gives: what was flown along it before it was established is not hidden. */
import { describe, expect, it } from "vitest";
import type { CourseExercise } from "../../src/brief/brief.ts";
import { gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { courseExercise, measured, type Row, secondsOf, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
const given = { start: Date.UTC(2026, 9, 17, 1), end: Date.UTC(2026, 9, 17, 2) };
const leg = (between: CourseExercise["between"]): CourseExercise => ({
  ...courseExercise("leg", 0, "rnav-1"),
  between,
});
/** 1.2 NM left of the course for five minutes along it, then a cut of 30 degrees and two minutes on it. */
const late = tracksOff({ along: -9, across: -1.2 }, [
  [0, 300],
  [30, 91],
  [0, 120],
]);
/** A cut of 30 degrees from 3 NM left, then nine minutes on the course, to the end of its 11.1 NM. */
const cut = tracksOff({ along: -9, across: -3 }, [
  [30, 216],
  [0, 540],
]);

const needle = ({ facts }: ReturnType<typeof measured>) =>
  gradeCourse(facts, us).find((v) => v.criterion === "course-needle")!;
const of = (rows: Row[], between: CourseExercise["between"]) => measured(leg(between), rows);

describe("minutes along the course but off it, in the time that the brief gives", () => {
  const flown = of(late, given);

  it("are told, with the worst of them and how much is judged", () => {
    const before = flown.facts.beforeEstablished!;
    near(before.worstNm, -1.2, 0.02, "NM");
    near(before.windowS, 510, 2, "s");
    expect(flown.findings[0]!.code).toBe("judged-in-part");
    near(secondsOf(flown.facts.judged.fromUtc!), 365, 35, "s");
  });

  it("are no turn that came early, and the needle is not met", () => {
    expect(flown.findings.map((f) => f.code)).not.toContain("turned-early");
    expect(needle(flown)).toMatchObject({ verdict: "cannot tell", reason: "part-of-window" });
    expect(needle(flown).partFromUtc).toBe(flown.facts.judged.fromUtc);
  });

  it("found without a time in the brief they are judged as ever", () => {
    expect(of(late, null).facts.beforeEstablished).toBeUndefined();
  });
});

it("an intercept in the time that the brief gives is no part of the course: met as without it", () => {
  const flown = of(cut, given);
  expect(flown.facts.beforeEstablished).toBeUndefined();
  expect(needle(flown)).toMatchObject({ verdict: "met", reason: null });
});
