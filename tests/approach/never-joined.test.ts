/** A final that was never joined, by ruler: the roll along the runway, and taxiing beside it, are no joining of it. */
import { describe, expect, it } from "vitest";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";

/** Half a mile beside the final all along, and onto the runway by a cut of some 60 degrees in the last quarter of a mile. */
const beside = straightIn(
  8,
  (b) => (b > 0.25 ? 0.5 : Math.max(0, 2 * b)),
  (b) => Math.min(1650, beam(Math.max(0, b))),
);

/** Taxied for two minutes at 12 kt, in the direction of the final, from two miles before the threshold on its line. */
const taxied = (rows: readonly Row[]): Row[] => {
  const out = Array.from({ length: 120 }, (_, t) => ({
    t,
    before: 2 - (t * 12) / 3600,
    aside: 0,
    height: 0,
  }));
  const lifted = Array.from({ length: 300 }, (_, k) => ({
    t: 120 + k,
    before: 1.6 + (6.4 * k) / 300,
    aside: (0.5 * k) / 300,
    height: (1650 * k) / 300,
  }));
  return [...out, ...lifted, ...rows.map((row) => ({ ...row, t: row.t + 420 }))];
};

describe("by construction: beside the final until over the runway", () => {
  it.each([
    ["with the roll after it", beside],
    ["with taxiing along its line before it", taxied(beside)],
  ])("%s it was not joined", (_, rows) => {
    const { facts, findings } = measured(approachTo(FIELD), rows);
    expect(facts.joinedFrom).toBe("not-joined");
    expect(facts.intercept).toBeNull();
    expect(facts.joining).toBeNull();
    expect(findings.map(({ code }) => code)).toContain("final-never-joined");
  });
  it("on the final it was", () => {
    const on = straightIn(
      8,
      () => 0,
      (b) => Math.min(1650, beam(Math.max(0, b))),
    );
    expect(measured(approachTo(FIELD), on).facts.joinedFrom).toBe("straight-in");
  });
});
