/** What a silence of the log may hide of an approach: at a gate, and of the lowest height above the minimum. */
import { expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
/** Level 60 ft above a minimum of 500 ft over the threshold from 2 NM on, and a climb away from 0.5 NM. */
const exercise = approachTo(FIELD, {
  glidePath: null,
  minimum: { kind: "descent", altitude: FIELD.elevation + 500 },
});
const level = straightIn(
  9,
  () => 0,
  (b) => (b < 0.5 ? 560 + (0.5 - b) * 600 : Math.max(560, Math.min(1650, beam(b)))),
  { roll: false, to: -1.5 },
);
const without = (rows: readonly Row[], from: number, to: number) =>
  rows.filter(({ before }) => !(before < from && before > to));
const lowest = (rows: readonly Row[]) => {
  const { facts } = measured(exercise, rows);
  approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  // judged as if the altimeter had been read to 10 ft
  const known = { ...facts, minimum: { ...facts.minimum!, altimeter95Ft: 10 } };
  const below = gradeApproach(known, us).find((v) => v.criterion === "approach-minimum-below")!;
  return { minimum: facts.minimum!, below };
};

it("logged each second, the lowest is what was seen, and above the minimum", () => {
  const { minimum, below } = lowest(level);
  near(minimum.marginFt!, 60, 5, "ft");
  expect([minimum.unseen ?? null, below.verdict]).toEqual([null, "met"]);
});

it("40 s of silence at the minimum may hide a descent of 500 ft/min and back: it cannot be told", () => {
  const { minimum, below } = lowest(without(level, 1.6, 0.6));
  near(minimum.marginFt!, 60, 5, "ft");
  // 500 ft/min reached in 5 s: 41 s leave 8.33 ft/s times 20.5 less 5 s
  near(minimum.unseen!.most, 8.333 * (41 / 2 - 5) - 60, 12, "ft");
  near(minimum.unseen!.seconds!, 41, 1.5, "s");
  expect([below.verdict, below.reason, below.silentS]).toEqual([
    "cannot tell",
    "log-silent",
    minimum.unseen!.seconds,
  ]);
});

it("the same silence high on the final hides nothing of the minimum", () => {
  const { minimum, below } = lowest(without(level, 4.8, 3.8));
  expect([minimum.unseen ?? null, below.verdict]).toEqual([null, "met"]);
});

it("a gate that was passed in a silence has its doubt from it, and the verdict says so", () => {
  const rows = straightIn(9, () => 0, beam);
  const gateOf = (shown: readonly Row[]) => {
    const { facts } = measured(approachTo(FIELD), shown);
    const verdicts = gradeApproach(facts, {
      ...us,
      approach: {
        ...us.approach,
        gates: {
          needle: { limit: 0.5, edge: "within", citation: "" },
          sink: { limit: 1000, edge: "within", citation: "" },
        },
      },
    });
    return {
      gate: facts.gates.find(({ heightFt }) => heightFt === 1000)!,
      verdict: verdicts.find((v) => v.criterion === "approach-gate-1000-needle")!,
    };
  };
  const seen = gateOf(rows);
  expect([seen.gate.silentS ?? null, seen.verdict.verdict]).toEqual([null, "met"]);
  const silent = gateOf(without(rows, 3.5, 2.5));
  near(silent.gate.silentS!, 41, 1.5, "s");
  near(seen.gate.groundSpeedKt!, 90, 1, "kt");
  expect([silent.gate.groundSpeedKt, silent.gate.groundSpeedChangeKt]).toEqual([null, null]);
  // 20 degrees off and back at 90 kt for 20 s each way make over a tenth of a mile: more than half a scale
  expect(silent.gate.lateral!.doubt95).toBeGreaterThan(0.5);
  expect([silent.verdict.verdict, silent.verdict.reason]).toEqual(["cannot tell", "log-silent"]);
});

it("over the final fix in a silence, the height has the doubt of what the silence may hide", () => {
  const rows = straightIn(9, () => 0, beam);
  const passageOf = (shown: readonly Row[]) => measured(approachTo(FIELD), shown).facts.finalFixPassage!;
  const [seen, silent] = [passageOf(rows), passageOf(without(rows, 5.5, 4.5))];
  // 500 ft/min reached in 5 s: 42 s leave 8.33 ft/s times 21 less 5 s
  near(silent.altitude95Ft! - seen.altitude95Ft!, 8.333 * (42 / 2 - 5), 8, "ft");
  near(silent.altimeter95Ft! - seen.altimeter95Ft!, 8.333 * (42 / 2 - 5), 8, "ft");
});
