/** A course that was never flown as such: what was flown in its place is said. By construction: straight lines on the plane of the course. */
import { expect, it } from "vitest";
import type { CourseRecord } from "../../src/debrief/document.ts";
import { findingSentence } from "../../src/report/index.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const told = (across: number, off: number, seconds: number, along = -19) => {
  const exercise = courseExercise("to", 241, "vor");
  const { facts, findings } = measured(exercise, tracksOff({ along, across }, [[off, seconds]]));
  const record = { kind: "course", facts, findings, source: "brief" } as unknown as CourseRecord;
  const found = findings.find(({ code }) => code === "straight-beside");
  return { found, words: found && findingSentence(found, record) };
};

it("1.5 NM beside it all along: told with side and distance", () => {
  const { found, words } = told(1.5, 0, 640);
  near(Number(found!.facts.meanNm), 1.5, 0.02, "NM");
  expect(words).toBe("One straight track was flown beside the course, 1.50 NM right of course in the mean.");
});

it("10° off all the way to the station: never established, and the track that was flown is told", () => {
  // 19 NM out on a radial 10° to the left of the one of the brief: 3.35 NM beside it
  const { found, words } = told(-19 * Math.tan(Math.PI / 18), 10, 640);
  near(Number(found!.facts.offDeg), 10, 0.3, "°");
  expect(words).toMatch(
    /^One straight track was flown, 10° right of the course, from 3\.3\d NM left of course to /,
  );
});

it.each([
  ["on it", 0, 0],
  ["a drift of 2° from it", 0, 2],
])("%s: nothing is said of another track", (_, across, off) => {
  expect(told(across, off, 500).found).toBeUndefined();
});
