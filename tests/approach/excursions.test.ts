/** Where the final was left: from established on, once each, and not for the cut that joined it. */
import { describe, expect, it } from "vitest";
import {
  approachTo,
  beam,
  FIELD,
  measured,
  type Row,
  straightIn,
  tracks,
} from "../support/flown-approach.ts";

const codes = (rows: readonly Row[]) =>
  measured(approachTo(FIELD), rows)
    .findings.map(({ code }) => code)
    .filter((code) => /overshot|track-off/.test(code));

describe("a final joined inside its fix", () => {
  // at 45 degrees from the right, through it and back: established 3 NM before the threshold
  const through = tracks(5.8, 1, [
    [-45, 72],
    [25, 45],
    [0, 90],
  ]);
  it("and overshot by the cut is told of the overshoot, and of nothing else", () => {
    expect(codes(through)).toEqual(["final-overshot"]);
  });
});

it.each([true, false])(
  "a final that was never established is judged as far as it was flown, with a roll after it: %s",
  (roll) => {
    const beside = (before: number) => 0.7 + (6 - before) * 0.1;
    const { facts } = measured(
      approachTo(FIELD),
      straightIn(6, beside, (b) => Math.min(1650, beam(b)), { roll }),
    );
    expect(facts.excursions).toHaveLength(1);
  },
);
