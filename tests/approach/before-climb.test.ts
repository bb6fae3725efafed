/** A climb away is no part of how the glide path was kept, in a log of few points neither. Truth by construction: on the beam to the climb. */
import { describe, expect, it } from "vitest";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

/** Rolled on the runway before; then down the beam at 90 kt to a height, and up at 720 ft/min; one point every so many seconds. */
function climbFrom(height: number, every: number, first: number) {
  const down = straightIn(
    9,
    () => 0,
    (b) => Math.max(0, Math.min(1650, beam(b))),
    { roll: false, to: -1 },
  );
  const rows = down.filter((r) => r.height > height || r.before > 2);
  const lowest = rows.at(-1)!;
  const up = Array.from({ length: 150 }, (_, k) => ({
    ...{ t: lowest.t + 1 + k, before: lowest.before - (k + 1) / 40, aside: 0 },
    height: lowest.height + 12 * k,
  }));
  const roll: Row[] = Array.from({ length: 60 }, (_, t) => ({ t, before: -0.1, aside: 0, height: 0 }));
  const all = [...roll, ...[...rows, ...up].map((r) => ({ ...r, t: r.t + 600 }))];
  return measured(
    approachTo(FIELD),
    all.filter(({ t }) => t % every === first),
  ).facts;
}

describe.each([1, 5, 10, 15])("a point every %s s, on the beam until a climb", (every) => {
  it.each([0, 3, 7].filter((first) => first < every))(
    "from second %s: on the path, and down its line",
    (first) => {
      for (const height of [230, 260, 400]) {
        const facts = climbFrom(height, every, first);
        expect(facts.outcome).toBe("missed");
        near(facts.glidePath!.needle.max, 0, 0.03);
        expect(facts.glidePath!.aboveLow?.ft ?? 0).toBeLessThan(2);
        near(facts.flownPath!.angleDeg, 3, 0.02, "deg");
        near(facts.descent!.meanFpm, 478, 20, "ft/min");
        const eu = gradeApproach(facts, standardNamed("instrument-rating-eu")!);
        expect(eu.find(({ criterion }) => criterion === "approach-glide-path")!.verdict).not.toBe("not met");
      }
    },
  );
});
