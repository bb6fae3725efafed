/** The doubt of a solved racetrack against the spread of solutions in many drawn winds. */
import { describe, expect, it } from "vitest";
import { type HoldQuestion, racetrackDoubt, solveRacetrack } from "../../src/hold/index.ts";
import { near } from "../support/near.ts";

const QUESTION: HoldQuestion = {
  inbound: 247,
  turns: "right",
  trueAirspeed: 100,
  wind: { from: 160, speed: 18 },
  leg: { by: "inbound-time", seconds: 60 },
  turnRate: 3,
  mostBank: 30,
};
const CHI_95 = Math.sqrt(-2 * Math.log(0.05)); // exact for two degrees of freedom

describe("doubt of the racetrack", () => {
  it.each([
    ["wings level", 160],
    ["abeam the fix, with the wind from behind on the inbound leg", 110],
  ] as const)(
    "with the clock started at %s it is the spread over a regular grid of winds inside the doubt (Gauss-Hermite, 5 points an axis)",
    (_, windFrom) => {
      const question = { ...QUESTION, wind: { from: windFrom, speed: 18 } };
      // Nodes and weights for a standard normal: Abramowitz and Stegun, table 25.10, times the square root of 2
      const nodes = [0, 1.355626, -1.355626, 2.85697, -2.85697];
      const weights = [0.533333, 0.222076, 0.222076, 0.011257, 0.011257];
      const [major, minor] = [3, 1.5];
      const axis = (20 * Math.PI) / 180;
      const sums = { w: 0, h: 0, hh: 0, s: 0, ss: 0, f: 0, ff: 0 };
      const windAngle = (windFrom * Math.PI) / 180;
      for (let i = 0; i < 5; i++) {
        for (let j = 0; j < 5; j++) {
          const a = (nodes[i]! * major) / CHI_95;
          const b = (nodes[j]! * minor) / CHI_95;
          const east = -18 * Math.sin(windAngle) + a * Math.sin(axis) + b * Math.cos(axis);
          const north = -18 * Math.cos(windAngle) + a * Math.cos(axis) - b * Math.sin(axis);
          const from = (Math.atan2(-east, -north) * 180) / Math.PI;
          const solved = solveRacetrack({ ...question, wind: { from, speed: Math.hypot(east, north) } });
          if ("none" in solved) throw new Error("no solution");
          const w = weights[i]! * weights[j]!;
          sums.w += w;
          sums.h += w * solved.outboundCorrectionDeg;
          sums.hh += w * solved.outboundCorrectionDeg ** 2;
          const clock = Math.min(solved.outboundS, solved.outboundFromAbeamS!);
          sums.s += w * clock;
          sums.ss += w * clock ** 2;
          sums.f += w * solved.factor!;
          sums.ff += w * solved.factor! ** 2;
        }
      }
      near(sums.w, 1, 1e-4);
      const doubt = racetrackDoubt(question, { major, minor, majorAxis: 20 }, 0)!;
      const spread = (s: number, ss: number) => 1.96 * Math.sqrt(ss - (s * s) / sums.w);
      near(doubt.outboundCorrection95Deg, spread(sums.h, sums.hh), 0.1 * spread(sums.h, sums.hh), "deg");
      near(doubt.outbound95S, spread(sums.s, sums.ss), 0.1 * spread(sums.s, sums.ss), "s");
      near(doubt.factor95!, spread(sums.f, sums.ff), 0.15 * spread(sums.f, sums.ff));
    },
  );

  it("is nothing without doubt, grows with that of the airspeed, and is unknown where winds without a solution are near", () => {
    const none = racetrackDoubt(QUESTION, { major: 0, minor: 0, majorAxis: 0 }, 0)!;
    expect(none).toEqual({
      inboundCorrection95Deg: 0,
      outboundCorrection95Deg: 0,
      outbound95S: 0,
      factor95: 0,
    });
    expect(
      racetrackDoubt(QUESTION, { major: 0, minor: 0, majorAxis: 0 }, 10)!.inboundCorrection95Deg,
    ).toBeGreaterThan(0.5);
    const edge = { ...QUESTION, wind: { from: 247, speed: 32 } };
    expect(racetrackDoubt(edge, { major: 10, minor: 10, majorAxis: 0 }, 0)).toBeNull();
  });
});
