/** Where the final was left: from established on, once each, and not for the cut that joined it. */
import { describe, expect, it } from "vitest";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";

/** Tracks held for so many seconds at 90 kt, degrees right of the final, turns at 3 degrees a second; down a path of 3 degrees. */
function tracks(before: number, aside: number, parts: readonly (readonly [number, number])[]): Row[] {
  const rows: Row[] = [];
  let off = parts[0]![0];
  let at = { before, aside };
  for (const [wanted, seconds] of parts)
    for (let k = 0; k < seconds; k++) {
      rows.push({ t: rows.length, ...at, height: Math.min(1650, beam(at.before)) });
      off += Math.max(-3, Math.min(3, wanted - off));
      const way = 90 / 3600;
      at = {
        before: at.before - way * Math.cos((off * Math.PI) / 180),
        aside: at.aside + way * Math.sin((off * Math.PI) / 180),
      };
    }
  return rows;
}
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
