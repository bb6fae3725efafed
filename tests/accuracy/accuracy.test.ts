/** The gate of `npm test`: a small fixed set of the flights that `npm run accuracy` flies in hundreds. */
import { describe, expect, it } from "vitest";
import { Meter } from "./compare.ts";
import { scoreReal } from "./real.ts";
import { flyScenario, LOGGINGS, MISMATCHES, SCENARIOS } from "./scenarios.ts";

const SEEDS = 12;
const FIRST_SEED = 400_000;

/**
 * Limits on the root mean square error of the wind vector, kt, from the prototype that the project was planned on (see
 * each line), widened by a third: twelve flights scatter so much.
 */
const LIMITS: Readonly<Record<string, number>> = {
  "one 360": 1.3 * 1.33,
  "two laps of a hold": 1.25 * 1.33,
  "procedure turn": 1.5 * 1.33,
  "cross-country": 5.5, // courses drawn with changes of 30 to 90 degrees either way: some hardly differ
  "training hour": 2.6 * 1.33,
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
      if (!scenario.name.includes("country")) expect(r.claimed).toBeGreaterThan(0.7);
    },
  );

  it("a single straight claims neither direction nor speed, and its doubt holds the truth", () => {
    const r = meter(SCENARIOS.find((s) => s.name === "straight")!);
    expect(r.claimed).toBe(0);
    expect(r.coverage).toBeGreaterThan(0.85);
  });

  it.each(MISMATCHES)("holds the truth in its ellipse with $name", ({ options }) => {
    const laps = meter(SCENARIOS.find((s) => s.name === "two laps of a hold")!, options);
    expect(laps.coverage).toBeGreaterThan(0.85);
    const hour = meter(SCENARIOS.find((s) => s.name === "training hour")!, options);
    expect(hour.coverage).toBeGreaterThan(0.82);
  });

  it.each(LOGGINGS)("finds the wind of two laps in a log of %s s", (every) => {
    const r = meter(SCENARIOS.find((s) => s.name === "two laps of a hold")!, { every });
    expect(r.rmse).toBeLessThan(1.8);
    expect(r.claimed).toBeGreaterThan(0.9);
  });

  it("leaves no scenario out", () => {
    expect(SCENARIOS.map((s) => s.name).sort()).toEqual([...Object.keys(LIMITS), "straight"].sort());
  });
});

it("real flights: a folder that is absent is skipped, not failed", () => {
  expect(scoreReal("/nowhere/at/all")).toBeNull();
});
