/** The gate of `npm test` for approaches: a small fixed set of those that `npm run accuracy -- --approaches` flies in hundreds. */
import { describe, expect, it } from "vitest";
import { heightBounds, leftOver } from "./approach-bound.ts";
import { type ApproachErrors, meterApproach, noErrors, spreadOf } from "./approaches.ts";

/** Never used for tuning. */
const FIRST_SEED = 400_000;
const SEEDS = 6;

function flown(every: number): ApproachErrors {
  const errors = noErrors();
  for (let seed = FIRST_SEED; seed < FIRST_SEED + SEEDS; seed++)
    for (const ends of ["landing", "missed"] as const) meterApproach(errors, { seed, every, ends });
  return errors;
}

describe.each([1, 5])("simulated approaches in wind to 30 kt, logged each %i s, unseen seeds", (every) => {
  const errors = flown(every);
  it("are all matched by the brief, and all found without it", () => {
    expect([errors.flights, errors.matched, errors.found]).toEqual([2 * SEEDS, 2 * SEEDS, 2 * SEEDS]);
    expect(errors.missing).toEqual([]);
  });
  it("lateral within 6 m rms of the truth, the receiver's error and all", () => {
    expect(spreadOf(errors.lateralM).rms).toBeLessThan(6);
  });
  it("angle flown within 0.05 degrees rms where tied to the runway", () => {
    expect(errors.angleDeg.length).toBe(SEEDS);
    // six flights scatter: the big run has 0.04 rms
    expect(spreadOf(errors.angleDeg).rms).toBeLessThan(0.065);
  });
  it("overshoot within 0.02 NM, fix and threshold within 2 s, missed approach within 5 s", () => {
    expect(spreadOf(errors.overshootNm).worst).toBeLessThan(0.02);
    expect(spreadOf(errors.fixS).worst).toBeLessThan(2);
    expect(spreadOf(errors.thresholdS).worst).toBeLessThan(2);
    expect(errors.missedS.length).toBe(SEEDS);
    expect(spreadOf(errors.missedS).worst).toBeLessThan(5);
  });
  it("minimum within 2 s but for the receiver's height error, which is 5 m: 2 s of descent by itself", () => {
    expect(errors.minimumS.length).toBeGreaterThan(SEEDS);
    expect(spreadOf(errors.minimumOwnS).p95).toBeLessThan(2);
    expect(spreadOf(errors.minimumS).rms).toBeLessThan(3);
  });
});

describe("the bound of the receiver's height error, 4 to 6 m that last 1 to 5 minutes: no analysis of the log can do better", () => {
  const bounds = heightBounds(FIRST_SEED);
  it("0.05 degrees are met by three quarters of the flights at best, 2 s at the minimum by 93 %, or seven tenths without a roll", () => {
    expect(bounds.angleDeg.rms).toBeGreaterThan(0.04);
    expect(bounds.angleDeg.within).toBeLessThan(0.8);
    expect(bounds.minimumTiedS.within).toBeLessThan(0.95);
    expect(bounds.minimumUntiedS.within).toBeLessThan(0.75);
  });
  it("with the error known alike at both ends nothing is left: an error that lasts for ever is a datum", () => {
    expect(leftOver([0, 1, 0], [0, 100, 160], 1, 5, 1e9)).toBeLessThan(1e-3);
    // a Gauss-Markov error seen a time constant later, datum unknown: 2 sd2 (1 - 1/e)
    expect(leftOver([1, 0], [0, 100], 1, 5, 100)).toBeCloseTo(50 * (1 - Math.exp(-1)), 2);
    expect(leftOver([1], [0], 0, 5, 100)).toBeCloseTo(25, 6);
  });
});
