import { describe, expect, it } from "vitest";
import {
  approachesAboutLimits,
  arcsAboutLimits,
  courseHeightsAboutLimits,
  descentsAboutLimits,
} from "./about-limits.ts";
import { calibrate } from "./calibration.ts";
import { calibrateHolds } from "./calibration-holds.ts";
import { calibrateApproaches, calibrateArcsAndDescents } from "./calibration-others.ts";

it("simulated courses with known truth, limits drawn around it: of met and not met at most 5 % are wrong, at most 15 % cannot be told", () => {
  const { exercises, notFound, tallies } = calibrate(5000, 30);
  const { given, wrong, cannotTell } = tallies["course-needle"]!;
  expect(exercises).toBe(120);
  expect(notFound).toBe(0);
  expect(wrong / given).toBeLessThanOrEqual(0.05);
  expect(cannotTell / exercises).toBeLessThanOrEqual(0.15);
});

describe("simulated approaches, arcs and descents, limits drawn around the truth: of met and not met one is wrong, or at most 5 %", () => {
  const tallies = { ...calibrateApproaches(5000, 40), ...calibrateArcsAndDescents(5000, 48) };
  it("every criterion that the truth knows was judged", () => {
    expect(Object.keys(tallies).sort()).toEqual([
      "approach-gate-1000-sink",
      "approach-gate-500-sink",
      "approach-glide-path",
      "approach-needle",
      "arc-distance",
      "descent-height",
    ]);
  });
  it.each(Object.entries(tallies))("%s", (_, { given, wrong }) => {
    expect(wrong).toBeLessThanOrEqual(Math.max(1, 0.05 * given));
  });
  it("needles and arcs are told but for a third: a fifth of the scale is known to a fifth of itself", () => {
    for (const id of ["approach-needle", "arc-distance"]) {
      const { given, cannotTell } = tallies[id]!;
      expect(cannotTell / (given + cannotTell)).toBeLessThan(1 / 3);
    }
  });
});

describe("simulated holds of every kind in a known wind, logged each second, limits drawn around the truth", () => {
  const tallies = calibrateHolds(5000, 60);
  it.each(["hold-needle", "hold-entry", "hold-leg-time"])(
    "%s: of met and not met at most 5 % are wrong, at most 15 % cannot be told",
    (id) => {
      const { given, wrong, cannotTell } = tallies[id]!;
      expect(given + cannotTell).toBeGreaterThan(30);
      expect(wrong).toBeLessThanOrEqual(0.05 * given);
      expect(cannotTell).toBeLessThanOrEqual(0.15 * (given + cannotTell));
    },
  );
});

describe("simulated flights whose truth is about the published limits", () => {
  const tallies = {
    ...courseHeightsAboutLimits(5000, 6),
    ...arcsAboutLimits(5000, 24),
    ...descentsAboutLimits(5000, 12),
    ...approachesAboutLimits(5000, 24),
  };
  it.each(Object.entries(tallies))(
    "%s: of met and not met one is wrong, or at most 5 % %j",
    (_, { given, wrong }) => {
      expect(wrong).toBeLessThanOrEqual(Math.max(1, 0.05 * given));
    },
  );
  // heights against a briefed one and the glide path near the runway are what a GPS seldom tells
  it.each([
    "course-height-steady",
    "arc-distance",
    "arc-height-steady",
    "approach-needle",
    "approach-gate-1000-sink",
  ])("%s: of these few dozen at most a fourth cannot be told", (id) => {
    const { given, cannotTell } = tallies[id]!;
    expect(given + cannotTell).toBeGreaterThanOrEqual(10);
    expect(cannotTell).toBeLessThanOrEqual(0.25 * (given + cannotTell));
  });
});
