/** A course let go from its fix on is judged from there: what is corrected late is no intercept. */
import { expect, it } from "vitest";
import { courseExercise, measured, mirrored, tracksOff } from "../support/flown-course.ts";

/** Over the station, 12 degrees off the course for 400 s, then back on a cut of 30 degrees, and four minutes on it. */
const letGo = tracksOff({ along: 0, across: 0 }, [
  [12, 400],
  [-30, 165],
  [0, 240],
]);
/** From 3 NM left of the course on a cut of 30 degrees, then five minutes on it. */
const intercept = tracksOff({ along: 0.2, across: -3 }, [
  [30, 216],
  [0, 300],
]);

it.each([
  ["right", letGo],
  ["left", mirrored(letGo)],
] as const)("12 degrees off to the %s from the station on are judged and told", (side, rows) => {
  const { facts, findings } = measured(courseExercise("from", 270, "vor"), rows);
  // 12 degrees from the station are 1.2 of a full scale of 10 degrees
  expect(Math.abs(facts.needle.max)).toBeGreaterThan(1.15);
  expect(findings[0]!.code).toBe("drifted-before-needle");
  expect(facts.excursions[0]!.side).toBe(side);
});

it("an intercept from elsewhere stays unjudged until it has joined", () => {
  const { facts } = measured(courseExercise("from", 270, "vor"), intercept);
  expect(facts.judged.begins).toBe("established");
  expect(Math.abs(facts.needle.max)).toBeLessThan(0.5);
});
