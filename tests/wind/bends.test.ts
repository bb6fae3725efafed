/** Small turns in thin logs: told as two courses, neither from a wandering heading nor from a slow arc. */
import { describe, expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { cutAtBends } from "../../src/wind/bends.ts";
import { Meter } from "../accuracy/compare.ts";
import { flyScenario, SCENARIOS } from "../accuracy/scenarios.ts";
import { type FlownStep, fly } from "../support/flown.ts";

const cut = (seed: number, every: number | "adaptive", steps: FlownStep[]) => {
  const motion = smoothTrack(fly({ seed, every, shear: 0, steps }).track)!;
  return cutAtBends(motion, findLegs(motion));
};

describe("by construction, 20 flights each: cut at its bends a straight has", () => {
  const seeds = Array.from({ length: 20 }, (_, i) => 5000 + i);
  it.each([1, 5, "adaptive"] as const)(
    "two courses where it turns by 30 degrees, logged at %s s",
    (every) => {
      for (const seed of seeds) {
        const legs = cut(seed, every, [{ straight: 300 }, { turn: 30 }, { straight: 300 }]);
        expect(legs.map((l) => l.kind).join(" "), `seed ${seed}`).toBe("straight turn straight");
        // in wind the track turns by another angle than the nose
        expect(legs[1]!.turn).toBeGreaterThan(15);
        expect(legs[1]!.turn).toBeLessThan(50);
        for (let i = 1; i < legs.length; i++) expect(legs[i]!.span.start).toBe(legs[i - 1]!.span.end);
      }
    },
  );
  it.each([1, 5, "adaptive"] as const)(
    "one course where the heading only wanders, logged at %s s",
    (every) => {
      for (const seed of seeds) expect(cut(seed, every, [{ straight: 900 }]), `seed ${seed}`).toHaveLength(1);
    },
  );
  it("one course where it goes around an arc of 15 NM", () => {
    // 0.11 deg/s at 105 kt
    for (const seed of seeds.slice(0, 5))
      expect(cut(seed, 5, [{ turn: 60, rate: 0.11 }]), `seed ${seed}`).toHaveLength(1);
  });
});

it("the wind of four chosen courses is known from a log of 5 s as from one of 1 s", () => {
  const scenario = SCENARIOS.find((s) => s.name === "chosen courses")!;
  const rmse = (every: number) => {
    const meter = new Meter();
    for (let seed = 5000; seed < 5040; seed++) meter.flight(flyScenario(scenario, seed, { every }));
    return meter.report().rmse;
  };
  // the least errors that the noise allows differ by 2 % (the table of accuracy)
  expect(rmse(5)).toBeLessThan(1.1 * rmse(1));
});
