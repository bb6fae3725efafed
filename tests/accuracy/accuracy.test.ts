/** The gate of `npm test`: a small fixed set of the flights that `npm run accuracy` flies in hundreds. */
import { describe, expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { seeded } from "../support/flown.ts";
import { matched } from "./bound.ts";
import { Meter, rowsByTime } from "./compare.ts";
import { scoreReal } from "./real.ts";
import { flyScenario, LOGGINGS, MISMATCHES, SCENARIOS } from "./scenarios.ts";

const SEEDS = 12;
const FIRST_SEED = 400_000;
const STRAIGHTS = 150;
const MATCHED_SEEDS = 40;

/**
 * Limits on the root mean square error of the wind vector, kt, widened by a third: twelve flights scatter so much. From
 * the prototype that the project was planned on and what was wanted of its successor (chosen courses); the hour by the
 * big run: what is wanted there, 1.75 kt, would be had by believing that climbs keep the true airspeed and that the wind
 * does not walk with height, as in these flights and seldom in real ones.
 */
const LIMITS: Readonly<Record<string, number>> = {
  "one 360": 1.3 * 1.33,
  "two laps of a hold": 1.25 * 1.33,
  "procedure turn": 1.5 * 1.33,
  "cross-country": 5.5, // courses drawn with changes of 30 to 90 degrees either way: some hardly differ
  "chosen courses": 2.2 * 1.33,
  "training hour": 1.9 * 1.33,
};
const meter = (scenario: (typeof SCENARIOS)[number], options = {}) => {
  const m = new Meter();
  for (let seed = FIRST_SEED; seed < FIRST_SEED + SEEDS; seed++)
    m.flight(flyScenario(scenario, seed, options));
  const report = m.report();
  expect(report.flights).toBe(SEEDS);
  expect(report.samples).toBeGreaterThan(SEEDS * 10);
  return report;
};

describe("simulated flights, blind", () => {
  it.each(SCENARIOS.filter((s) => s.name in LIMITS))(
    "$name: error, coverage and claims within limits",
    (scenario) => {
      const r = meter(scenario);
      expect(r.rmse).toBeLessThan(LIMITS[scenario.name]!);
      expect(r.coverage).toBeGreaterThan(0.9);
      if (!/country|courses/.test(scenario.name)) expect(r.claimed).toBeGreaterThan(0.7);
    },
  );

  it("a single straight claims neither direction nor speed, and its doubt holds the truth", () => {
    const r = meter(SCENARIOS.find((s) => s.name === "straight")!);
    expect(r.claimed).toBe(0);
    expect(r.coverage).toBeGreaterThan(0.85);
  });

  it("a single straight with a stated airspeed: the wind along it, and nothing else, within the stated doubt", () => {
    const straight = SCENARIOS.find((s) => s.name === "straight")!;
    let held = 0;
    for (let seed = FIRST_SEED; seed < FIRST_SEED + STRAIGHTS; seed++) {
      const { normal } = seeded(seed);
      const { track, truth } = flyScenario(straight, seed);
      const motion = smoothTrack(track)!;
      // the wander of 1.5 kt apart, the first true airspeed is what the pilot would state, with an error of 5 kt
      const airspeed = { trueAirspeed: truth.trueAirspeed[0]! + 5 * normal(), doubt: 5 };
      const [fact] = estimateWind(motion, findLegs(motion), { airspeed, winds: [] }).legs;
      expect(fact).toMatchObject({
        knowledge: "along",
        from: null,
        speed: null,
        across: null,
        restsOn: "prior",
      });
      let along = 0;
      for (let k = 0; k < motion.length; k++) {
        const angle = (motion.trackAngle[k]! * Math.PI) / 180;
        along += (truth.airEast[k]! * Math.sin(angle) + truth.airNorth[k]! * Math.cos(angle)) / motion.length;
      }
      if (Math.abs(fact!.along! - along) <= fact!.along95!) held++;
    }
    expect(held / STRAIGHTS).toBeGreaterThanOrEqual(0.95);
  });

  it.each(MISMATCHES)("holds the truth in its ellipse with $name", ({ options }) => {
    const laps = meter(SCENARIOS.find((s) => s.name === "two laps of a hold")!, options);
    // 0.9 is wanted and has by the big run; errors of one flight go together, and twelve scatter by 0.03
    expect(laps.coverage).toBeGreaterThan(0.87);
    const hour = meter(SCENARIOS.find((s) => s.name === "training hour")!, options);
    expect(hour.coverage).toBeGreaterThan(0.87);
  });

  it("told the noise, the filter stays within 5 % of the Cramer-Rao bound in sum", () => {
    let [error, bound] = [0, 0];
    for (const scenario of SCENARIOS.filter((s) => s.matched)) {
      for (let seed = FIRST_SEED; seed < FIRST_SEED + MATCHED_SEEDS; seed++) {
        const best = matched(flyScenario(scenario, seed));
        error += best.error / MATCHED_SEEDS;
        bound += best.bound / MATCHED_SEEDS;
      }
    }
    expect(Math.sqrt(error / bound)).toBeLessThan(1.05);
  });

  it.each(LOGGINGS)("finds the wind of two laps in a log of %s s", (every) => {
    const r = meter(SCENARIOS.find((s) => s.name === "two laps of a hold")!, { every });
    expect(r.rmse).toBeLessThan(1.8);
    expect(r.claimed).toBeGreaterThan(0.9);
  });

  it("weighs a log that is dense in turns by time, as the bound does", () => {
    // by construction: a minute in 5 rows, then 20 s in 20
    const time = Float64Array.from([0, 15, 30, 45, 60, ...Array.from({ length: 20 }, (_, i) => 61 + i)]);
    const rows = rowsByTime({ time: time.map((t) => t * 1000), length: time.length }, 10);
    expect(rows.map((k) => time[k])).toEqual([0, 15, 15, 30, 45, 45, 60, 70, 80]);
  });

  it("leaves no scenario out", () => {
    expect(SCENARIOS.map((s) => s.name).sort()).toEqual([...Object.keys(LIMITS), "straight"].sort());
  });
});

it("real flights: a folder that is absent is skipped, not failed", () => {
  expect(scoreReal("/nowhere/at/all")).toBeNull();
});
