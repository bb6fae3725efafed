/** Holds: entries by the published sectors, and the solved racetrack proved by flying it. */
import { describe, expect, it } from "vitest";
import { turnFrom } from "../../src/quantity/angle.ts";
import { entryFor } from "../../src/simulator/entry.ts";
import { fly, SCENARIOS, scenarioNamed } from "../../src/simulator/index.ts";
import { solveRacetrack, solveRacetrackTo } from "../../src/simulator/racetrack.ts";
import type { HoldSkill, HoldStep, Side } from "../../src/simulator/script.ts";
import { near, nearDirection } from "../support/near.ts";
import { blowing, STILL } from "./still.ts";

const PERFECT: HoldSkill = { factor: "solved", windWrong: 0, timingWrong: 0 };
const hold = (skill: HoldSkill, turns: Side = "right"): HoldStep => ({
  do: "hold",
  fix: { latitude: 35.6, longitude: 172.36 },
  inbound: 90,
  turns,
  leg: { seconds: 60 },
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

describe("by construction: legs by distance", () => {
  const by = (leg: HoldStep["leg"], skill: HoldSkill, from: number, turns: Side = "right") =>
    held(from, 20, { ...hold(skill, turns), leg });

  it.each(["right", "left"] as const)("%s turns: the outbound leg ends where it was told to", (turns) => {
    for (const lap of by({ distance: 5, by: "along-track" }, PERFECT, 30, turns).laps) {
      near(lap.outboundEndAlongNm, -5, 0.03, "NM"); // half a second of flight is 0.014 NM
      near(lap.rolloutCrossTrackNm, 0, 0.12, "NM"); // solved, so it closes
    }
  });

  it("ends by the slant range of a station at sea level: at 4,000 ft, 4 NM are 3.946 NM over the ground (Pythagoras)", () => {
    const lap = by({ distance: 4, by: "slant-range" }, { ...PERFECT, factor: 0 }, 90).laps[0]!;
    near(Math.hypot(lap.outboundEndAlongNm, lap.outboundEndAcrossNm), 3.946, 0.03, "NM");
  });

  it("needs about twice the inbound correction for 3.33 NM, two minutes outbound at 100 kt (common practice, no source)", () => {
    const solved = solveRacetrackTo(3.33, "right", {
      ...{ inbound: 90, trueAirspeed: 100, airEast: 0, airNorth: -10, turnRate: 3 },
    })!;
    near(solved.outboundSeconds, 120, 10, "s");
    near(-solved.outboundCorrection / solved.inboundCorrection, 2, 0.1);
  });
});

describe("what the truth says of a lap", () => {
  it("has the parts in order, and an outbound leg flown parallel runs along the reciprocal of the course", () => {
    const { truth } = fly(scenarioNamed("hold-outbound-flown-parallel"), 1);
    const [flown] = truth.truth.holds;
    for (const lap of flown!.laps) {
      const times = [lap.utc, lap.outboundUtc, lap.inboundTurnUtc, lap.inboundUtc, lap.endUtc].map((t) =>
        Date.parse(t),
      );
      expect(times).toEqual(times.toSorted((a, b) => a - b));
      near((times[2]! - times[1]!) / 1000, lap.outboundS, 0.6, "s");
      near(lap.factor!, 1, 0.1);
      nearDirection(lap.meanOutboundTrackTrueDeg!, flown!.inboundTrueDeg + 180, 5);
      expect(lap.rolloutCrossTrackNm).toBeGreaterThan(0.3); // blown past the course, as the law says
    }
  });

  it("tells an entry that the sector did not ask for, part by part", () => {
    const { holds } = fly(
      {
        ...STILL,
        start: { ...STILL.start, position: { latitude: 35.6, longitude: 172.2 } },
        script: [{ ...hold(PERFECT), entry: "parallel" }],
      },
      1,
    ).truth.truth;
    expect([holds[0]!.entrySector, holds[0]!.entry]).toEqual(["direct", "parallel"]);
    expect(holds[0]!.entryParts.map((p) => p.part)).toEqual(["turn", "outbound", "inbound-turn", "inbound"]);
    expect(holds[0]!.entryParts.at(-1)!.endUtc).toBe(holds[0]!.laps[0]!.utc);
  });
});

describe("the four hold samples show what their names say", () => {
  const sample = (name: string) => fly(scenarioNamed(name), 1).truth.truth.holds[0]!;
  it.each([
    ["hold-direct-well-flown", "direct", "right"],
    ["hold-outbound-flown-parallel", "parallel", "right"],
    ["hold-teardrop-left-turns", "teardrop", "left"],
    ["hold-by-distance", "direct", "right"],
  ])("%s: %s entry, %s turns, as its sector asks", (name, entry, turn) => {
    const flown = sample(name);
    expect([flown.entry, flown.entrySector, flown.turn]).toEqual([entry, entry, turn]);
  });

  it("well flown: after the first lap the inbound legs take a minute within 10 s, from within 0.1 NM of the course", () => {
    for (const lap of sample("hold-direct-well-flown").laps.slice(1)) {
      near(lap.inboundS, 60, 10, "s");
      near(lap.rolloutCrossTrackNm, 0, 0.1, "NM");
    }
  });
});

describe("drawn holds and flights without one", () => {
  it("draws every entry, both sides, one to four laps, time and distance", () => {
    const holds = Array.from(
      { length: 40 },
      (_, i) => fly(SCENARIOS["hold-any"]!, i + 1).truth.truth.holds[0]!,
    );
    expect(new Set(holds.map((h) => h.entry)).size).toBe(3);
    expect(new Set(holds.map((h) => h.turn)).size).toBe(2);
    expect(new Set(holds.map((h) => h.laps.length)).size).toBe(4);
    expect(new Set(holds.map((h) => Object.keys(h.leg)[0])).size).toBe(2);
  });

  const NONE = ["orbits", "s-turns", "eights", "steep-turns", "vectors", "procedure-turns"];
  it.each([...NONE, "teardrop-reversals", "rectangular-circuits", "narrow-circuits", "oval-circuits"])(
    "%s: no hold",
    (name) => {
      for (let seed = 1; seed <= 5; seed++) expect(fly(SCENARIOS[name]!, seed).truth.truth.holds).toEqual([]);
    },
  );

  it("steep turns are at about 45 degrees of bank (tan bank = V rate / g)", () => {
    const { columns } = fly(SCENARIOS["steep-turns"]!, 1);
    const rates = Array.from(columns.heading.subarray(1), (h, i) =>
      Math.abs(turnFrom(columns.heading[i]!, h)),
    );
    const most = Math.max(...rates);
    const speed = columns.trueAirspeed[rates.indexOf(most)]! * 0.514444;
    near(Math.atan((speed * most * Math.PI) / 180 / 9.80665) * (180 / Math.PI), 45, 8, "deg");
  });

  it("oval circuits land each round", () => {
    const { columns } = fly(SCENARIOS["oval-circuits"]!, 1);
    let landings = 0;
    for (let i = 1; i < columns.length; i++)
      if (columns.altitude[i]! < 620 && columns.altitude[i - 1]! >= 620) landings++;
    expect(landings).toBeGreaterThanOrEqual(2);
  });
});
