/** Holds: entries by the published sectors, and the solved racetrack proved by flying it. */
import { describe, expect, it } from "vitest";
import { entryFor } from "../../src/simulator/hold.ts";
import { fly, SCENARIOS } from "../../src/simulator/index.ts";
import { solveRacetrack } from "../../src/simulator/racetrack.ts";
import type { HoldSkill, HoldStep, Side } from "../../src/simulator/script.ts";
import { near } from "../support/near.ts";
import { blowing, STILL } from "./still.ts";

const PERFECT: HoldSkill = { factor: "solved", windWrong: 0, timingWrong: 0 };
const hold = (skill: HoldSkill, turns: Side = "right"): HoldStep => ({
  do: "hold",
  fix: { latitude: 35.6, longitude: 172.36 },
  inbound: 90,
  turns,
  legSeconds: 60,
  laps: 3,
  skill,
  exercise: "hold",
});
const held = (from: number, speed: number, step: HoldStep) =>
  fly({ ...STILL, wind: blowing(from, speed), script: [step] }, 1).truth.truth.holds[0]!;

describe("FAA AIM 5-3-8 j, FIG 5-3-4: the 70 degree line, inbound course 090", () => {
  it.each([
    ["right", 90, "direct"],
    ["right", 30, "direct"],
    ["right", 195, "direct"],
    ["right", 205, "teardrop"],
    ["right", 265, "teardrop"],
    ["right", 275, "parallel"],
    ["right", 15, "parallel"],
    ["right", 25, "direct"],
    ["left", 335, "teardrop"],
    ["left", 265, "parallel"],
    ["left", 150, "direct"],
    ["left", 165, "parallel"],
  ] as const)("%s turns, heading %d: %s", (turns, heading, entry) => {
    expect(entryFor(heading, 90, turns)).toBe(entry);
  });

  it.each([
    ["hold-direct", "direct"],
    ["hold-teardrop", "teardrop"],
    ["hold-parallel", "parallel"],
  ] as const)("%s enters so for every seed", (name, entry) => {
    for (let seed = 1; seed <= 20; seed++) {
      const { holds } = fly(SCENARIOS[name]!, seed).truth.truth;
      expect(holds.map((h) => [h.entry, h.laps.length])).toEqual([[entry, 2]]);
    }
  });
});

describe("still-air racetrack, rate one and one-minute legs (arithmetic of the definition)", () => {
  it("takes four minutes and ends on the course", () => {
    const { laps } = held(0, 0, hold(PERFECT));
    for (const lap of laps) {
      near((Date.parse(lap.endUtc) - Date.parse(lap.utc)) / 1000, 240, 8, "s"); // roll-in and roll-out add a little
      near(lap.inboundS, 60, 6, "s");
      near(lap.rolloutCrossTrackNm, 0, 0.06, "NM");
    }
  });
});

describe("by construction: the racetrack solved for the wind closes when it is flown", () => {
  it.each([
    [0, 20, "right"],
    [180, 20, "right"],
    [45, 25, "right"],
    [300, 15, "right"],
    [180, 25, "left"],
    [90, 15, "left"],
  ] as const)(
    "wind %d/%d, %s turns: on course at the roll-out, and about a minute inbound",
    (from, speed, turns) => {
      for (const lap of held(from, speed, hold(PERFECT, turns)).laps) {
        near(lap.rolloutCrossTrackNm, 0, 0.1, "NM"); // roll lag widens each turn by some 2 s of flight
        near(lap.inboundS, 60, 9, "s");
      }
    },
  );

  it("one that is not corrected enough does not close", () => {
    const rule = (factor: 1 | 3) => held(0, 20, hold({ ...PERFECT, factor })).laps[0]!.rolloutCrossTrackNm;
    // (3 - m) * crosswind / 60 NM, the law of both turns: 2 * 20 / 60 for m = 1
    near(Math.abs(rule(1)), 0.67, 0.15, "NM");
    expect(Math.abs(rule(3))).toBeLessThan(0.15);
  });

  it("needs about three times the inbound correction in a crosswind of 10 kt (FAA AIM 5-3-8 j.6(c))", () => {
    const solved = solveRacetrack({
      ...{ inbound: 90, trueAirspeed: 100, airEast: 0, airNorth: -10, turnRate: 3, inboundSeconds: 60 },
    })!;
    near(-solved.outboundCorrection / solved.inboundCorrection, 3, 0.1);
    expect(solved.inboundCorrection).toBeLessThan(0); // wind from the left of the course
  });

  it("has no solution in a wind stronger than the airspeed", () => {
    const wind = { airEast: 0, airNorth: -110 };
    expect(
      solveRacetrack({ inbound: 90, trueAirspeed: 100, turnRate: 3, inboundSeconds: 60, ...wind }),
    ).toBeNull();
  });
});
