/** The gate of `npm test` for approaches: a small fixed set of those that `npm run accuracy -- --approaches` flies in hundreds. */
import { describe, expect, it } from "vitest";
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
