/** The log that ends, or begins, in flight in a lap says so, and nothing of the hold is met for the whole then. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { debriefCut, ofLap } from "./log-cut.ts";

const CASES = ["hold-direct-well-flown", "hold-outbound-flown-parallel", "hold-by-distance"].flatMap((name) =>
  [5301, 5302].map((seed) => [name, seed] as const),
);
const WHOLE = ["hold-needle", "hold-leg-time", "hold-leg-length", "hold-height-steady"];

describe.each([
  ["on the outbound leg", ofLap(2, "outboundUtc", 20)],
  ["in the turn inbound", ofLap(2, "inboundTurnUtc", 25)],
  ["on the inbound leg", ofLap(2, "inboundUtc", 15)],
] as const)("the log ends %s of the third lap", (_, to) => {
  it.each(CASES)("%s, seed %i", (name, seed) => {
    const { words, exercise } = debriefCut(name, seed, { to });
    expect(exercise.facts?.laps.length).toBe(2);
    expect(words).toMatch(/The log ends in flight, \d+ s after the last pass of the fix, as in a lap/);
    const met = exercise.verdicts.filter((v) => v.verdict === "met" && WHOLE.includes(v.criterion));
    expect(met).toEqual([]);
  });
});

it.each(CASES)("the log begins on the outbound leg of the first lap: %s, seed %i", (name, seed) => {
  const { words, exercise } = debriefCut(name, seed, { from: ofLap(0, "outboundUtc", 10) });
  expect(words).toMatch(/The log begins in flight, \d+ s before the first pass of the fix/);
  const met = exercise.verdicts.filter((v) => v.verdict === "met" && WHOLE.includes(v.criterion));
  expect(met).toEqual([]);
});

it.each(CASES)(
  "seen whole, or cut off soon after its last pass, nothing of it is missing: %s, seed %i",
  (name, seed) => {
    for (const to of [({ t1 }: { t1: string }) => Date.parse(t1) + 8000, undefined]) {
      const { words, exercise } = debriefCut(name, seed, to ? { to } : {});
      expect(exercise.facts?.lapCut).toEqual({ before: null, after: null });
      expect(words).not.toContain("in flight");
    }
  },
);
