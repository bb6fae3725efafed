/** Full scale of each guidance against published numbers, and what a needle shows of a distance off. */
import { describe, expect, it } from "vitest";
import { fullScaleAt, guideOf, needleAt } from "../../src/approach/guidance.ts";
import { deviationFrom, heightOnPath, pathGuideOf, visualDescentPoint } from "../../src/approach/vertical.ts";
import type { ApproachExercise } from "../../src/brief/brief.ts";
import { positionOn } from "../../src/geodesy/index.ts";
import { LOCALIZER_BY_ANTENNA } from "../../src/standard/approach-guidance.ts";
import { approachTo, beam, EARTH_M, FIELD, LENGTH_M } from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

const FEET_PER_NM = 1852 / 0.3048;
const RAD = Math.PI / 180;
const none = { width: null, antenna: null, station: null, rnp: null };
const guide = (guidance: Partial<ApproachExercise["guidance"]>, changes: Partial<ApproachExercise> = {}) =>
  guideOf(approachTo(FIELD, { guidance: { kind: "localizer", ...none, ...guidance }, ...changes }));

describe("FAA AIM 1-1-9: a localizer is 700 ft wide at the threshold, 3 to 6 degrees in all", () => {
  it.each(LOCALIZER_BY_ANTENNA)("antenna at $antenna ft: half angle $half degrees", ({ antenna, half }) => {
    const g = guide({ antenna });
    near(g.halfAngle!, half, 0.001, "deg");
    if (half < 3 && half > 1.5) near(fullScaleAt(g, 0) * FEET_PER_NM, 350, 0.5, "ft at the threshold");
  });
  it("is no wider than 6 and no narrower than 3 degrees", () => {
    expect(guide({ antenna: 3000 }).halfAngle).toBe(3);
    expect(guide({ antenna: 20_000 }).halfAngle).toBe(1.5);
  });
  it("a width written in the brief is the whole width, and stands its antenna where that is 700 ft", () => {
    const g = guide({ width: 5 });
    expect([g.halfAngle, g.supposed]).toEqual([2.5, false]);
    near(fullScaleAt(g, 0) * FEET_PER_NM, 350, 0.5, "ft");
  });
  it("nothing written, or no aid at all: supposed, from the runway's length and 1,000 ft", () => {
    const antenna = LENGTH_M / 0.3048 + 1000;
    for (const kind of ["localizer", "centre-line"] as const) {
      expect(guide({ kind }).supposed).toBe(true);
      near(guide({ kind }).halfAngle!, Math.min(3, Math.atan(350 / antenna) / RAD), 0.001, "deg");
    }
  });
  it("three quarters of 2.005 degrees at 5 NM is 1.504 degrees at the antenna", () => {
    const g = guide({ antenna: 10_000 });
    const reach = 5 + 10_000 / FEET_PER_NM;
    near(needleAt(g, 5, reach * Math.tan(1.504 * RAD)), 0.75, 0.001);
  });
});

describe("FAA AIM 1-1-17: LNAV shrinks from 1 NM to 0.3 NM over the 2 NM before the final fix", () => {
  it.each([
    [9, 1],
    [7, 1],
    [6, 0.65],
    [5, 0.3],
    [0, 0.3],
  ])("%d NM before the threshold, fix at 5: %d NM", (distance, scale) => {
    near(fullScaleAt(guide({ kind: "lnav" }), distance), scale, 1e-4, "NM");
  });
  it("RNP 0.5 is half a mile everywhere; three quarters of 0.3 NM is 0.225", () => {
    expect(fullScaleAt(guide({ kind: "rnp", rnp: 0.5 }), 8)).toBe(0.5);
    near(needleAt(guide({ kind: "lnav" }), 2, 0.225), 0.75, 1e-9);
  });
});

describe("FAA AIM 1-1-18: LPV and LNAV/VNAV", () => {
  const g = guide({ kind: "lpv" });
  it("is 700 ft wide at the threshold and past it", () => {
    near(fullScaleAt(g, 0) * FEET_PER_NM, 350, 0.5, "ft");
    near(fullScaleAt(g, -0.3) * FEET_PER_NM, 350, 0.5, "ft");
  });
  it("opens from a point 305 m beyond the far end (ICAO Annex 10, GARP) and is never wider than 0.3 NM on the final", () => {
    near(fullScaleAt(g, 2) * 1852, (350 * 0.3048 * (2 * 1852 + LENGTH_M + 305)) / (LENGTH_M + 305), 0.5, "m");
    for (let d = 0; d <= 5; d += 0.25) expect(fullScaleAt(g, d)).toBeLessThanOrEqual(0.3 + 1e-9);
    near(fullScaleAt(g, 7.5), 1, 1e-9, "NM");
  });
});

describe("VOR, 10 degrees at the station", () => {
  it("a station 6 NM past the threshold: 5.3 NM off at 30 NM is full scale", () => {
    const exercise = approachTo(FIELD);
    const at = positionOn(exercise.course, 6 * 1852);
    const station = { ...at, ident: "V", kind: "vor", declination: 0, elevation: null } as const;
    const g = guide({ kind: "vor", station });
    near(needleAt(g, 24, 30 * Math.tan(10 * RAD)), 1, 1e-4);
  });
});

describe("glide path", () => {
  const path = pathGuideOf(approachTo(FIELD))!;
  it("crosses the threshold at 50 ft, and at 5 NM is 318 ft/NM higher and 22 ft for the curve of the earth", () => {
    const start = (50 * 0.3048) / Math.tan(3 * RAD); // the beam begins past the threshold
    near(heightOnPath(path, 0), 50, 0.03, "ft"); // the curve over the 290 m from where it begins
    near(
      heightOnPath(path, 5),
      50 + 5 * 318.43 + (5 * 1852 + start) ** 2 / (2 * EARTH_M) / 0.3048,
      0.3,
      "ft",
    );
    near((5 * 1852) ** 2 / (2 * EARTH_M) / 0.3048, 22, 0.2, "ft");
  });
  it("FAA AIM 1-1-9 d: 0.7 degrees is full scale, above and below", () => {
    for (const off of [-0.7, 0.7]) {
      const start = 50 / Math.tan(3 * RAD) / FEET_PER_NM;
      // flat-earth height at that angle, and the curve
      const height = beam(3 + start, 3 + off, 0) + 0;
      const d = deviationFrom(path, 3, height)!;
      near(d.degrees, off, 0.001, "deg");
      near(d.needle, Math.sign(off), 0.002);
    }
  });
  it("LPV: a quarter of the angle is full scale far out, 15 m near the runway (DO-229, from memory)", () => {
    const lpv = pathGuideOf(approachTo(FIELD, { guidance: { kind: "lpv", ...none } }))!;
    near(
      deviationFrom(
        lpv,
        4,
        heightOnPath({ ...lpv, angle: 3.75, crossing: 50 * (Math.tan(3.75 * RAD) / Math.tan(3 * RAD)) }, 4),
      )!.needle,
      1,
      0.002,
    );
    near(deviationFrom(lpv, 0.1, heightOnPath(lpv, 0.1) + 15 / 0.3048)!.needle, 1, 0.01);
  });
  it("a barometric path keeps its angle over the ground: no curve of the earth", () => {
    const vnav = pathGuideOf(approachTo(FIELD, { guidance: { kind: "lnav-vnav", ...none } }))!;
    near(heightOnPath(vnav, 5), 50 + 5 * 318.43, 0.3, "ft");
  });
  it("visual descent point: HAT over 318 within a tenth of a mile, once the crossing height is left out", () => {
    near(visualDescentPoint(400, 3, 0), 400 / 318.4, 0.001, "NM");
    near(visualDescentPoint(400), 350 / 318.4, 0.001, "NM");
  });
});
