import { describe, expect, it } from "vitest";
import { fitCourses, measureCourse } from "../../src/course/index.ts";
import { courseThrough, positionOn } from "../../src/geodesy/index.ts";
import { smoothTrack } from "../../src/track/index.ts";
import { near, nearDirection } from "../support/near.ts";

const line = courseThrough({ latitude: 35.6, longitude: 172.3 }, 63);
const rows = 400;
/** 11 NM at 100 kt along the line, 60 m to and fro: five whole swings, so that the best line is the line. */
const sway = (i: number) => 60 * Math.cos((2 * Math.PI * 5 * i) / (rows - 1));
const places = Array.from({ length: rows }, (_, i) => positionOn(line, (i * 1852) / 36, sway(i)));
const motion = smoothTrack({
  name: "by ruler",
  kind: "simulated",
  length: rows,
  time: Float64Array.from(places, (_, i) => Date.UTC(2026, 9, 17) + i * 1000),
  latitude: Float64Array.from(places, (p) => p.latitude),
  longitude: Float64Array.from(places, (p) => p.longitude),
  altitude: new Float64Array(rows).fill(4000),
  segment: new Int32Array(rows),
  line: new Int32Array(rows),
})!;
const straight = { kind: "straight", span: { start: 0, end: rows }, turn: 0 } as const;

describe("by construction: a swaying straight", () => {
  const [fitted, ...others] = fitCourses(motion, [
    straight,
    { kind: "turn", span: { start: 0, end: rows }, turn: 90 },
    { kind: "straight", span: { start: 0, end: 80 }, turn: 0 },
  ]);

  it("gives the line that it sways about; turns and straights under 90 s give none", () => {
    expect(others).toEqual([]);
    nearDirection(fitted!.exercise.course.azimuth, 63, 0.02);
  });

  it("is measured for straightness and blamed for nothing", () => {
    const { facts, findings, whatWouldHaveWorked } = measureCourse({
      exercise: fitted!.exercise,
      path: motion,
      span: fitted!.span,
      motion,
      wind: null,
    });
    expect(facts.form).toBe("fitted");
    near(facts.crossTrack.meanNm, 0, 0.002, "NM");
    near(facts.crossTrack.rmsNm, 60 / 1852 / Math.SQRT2, 0.002, "NM");
    expect([facts.excursions, facts.intercept, whatWouldHaveWorked]).toEqual([[], null, null]);
    expect(findings.map((f) => f.code)).toEqual(["tracked-within"]);
  });

  it("is magnetic by WMM2025, about 2.5° east there", () => {
    near(63 - fitted!.exercise.magnetic!, 2.5, 0.3, "°");
  });
});

describe("by construction: a turn so wide that it counts as a straight", () => {
  const seconds = 2400;
  const every = 10; // rows a second
  const count = seconds * every;
  // 20 NM about a place at 100 kt: 66.7 NM of the circle, 191° of it.
  const about = (i: number) =>
    positionOn(
      courseThrough({ latitude: 35.6, longitude: 172.3 }, (i / every) * (100 / 3600 / 20) * (180 / Math.PI)),
      20 * 1852,
    );
  const circle = Array.from({ length: count }, (_, i) => about(i));
  const wide = smoothTrack({
    name: "wide",
    kind: "simulated",
    length: count,
    time: Float64Array.from(circle, (_, i) => Date.UTC(2026, 9, 17) + (i * 1000) / every),
    latitude: Float64Array.from(circle, (p) => p.latitude),
    longitude: Float64Array.from(circle, (p) => p.longitude),
    altitude: new Float64Array(count).fill(4000),
    segment: new Int32Array(count),
    line: new Int32Array(count),
  })!;

  it("is parted into lines of which none strays over half a mile, not row by row", () => {
    const fitted = fitCourses(wide, [{ kind: "straight", span: { start: 0, end: count }, turn: 0 }]);
    // An arc of radius r strays d to either side of its line over a length of sqrt(16 r d): 12.6 NM here; halves of halves.
    expect(fitted.length).toBeGreaterThanOrEqual(6);
    expect(fitted.length).toBeLessThanOrEqual(16);
    expect(fitted.at(-1)!.span.end).toBe(count);
  });
});
