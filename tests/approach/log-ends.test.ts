/** A log that ends in flight on the final: said so, and nothing of the final is met for the whole. */
import { expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import type { ApproachRecord } from "../../src/debrief/document.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { approachNotes, approachSentence } from "../../src/report/words/approach.ts";
import { approachTo, beam, FIELD, measured, straightIn } from "../support/flown-approach.ts";

const us = standardNamed("instrument-rating-us")!;
const verdicts = (aside: number, to: number) => {
  const rows = straightIn(
    9,
    () => aside,
    (b) => Math.min(1650, beam(b)),
    { roll: false, to },
  );
  const found = measured(approachTo(FIELD), rows);
  approachFactsSchema.parse(JSON.parse(JSON.stringify(found.facts)));
  const of = (id: string) => {
    const { verdict, reason } = gradeApproach(found.facts, us).find((v) => v.criterion === id)!;
    return [verdict, reason];
  };
  return { found, of };
};

it("1.5 NM before the threshold: the headline says so, and what was held until then is not met", () => {
  const { found, of } = verdicts(0, 1.5);
  expect(found.facts.outcome).toBe("log-ends");
  const record = { kind: "approach", ...found, verdicts: [] } as unknown as ApproachRecord;
  // 1.50 to 1.53 NM on 3 degrees from 50 ft: 530 to 540 ft, over a field at 420 ft
  expect(approachSentence(record)).toMatch(
    /The log ends in flight 1\.5 NM before the threshold at 9[56]0 ft, the minimum 620 ft; how the approach ended is not known\.$/,
  );
  expect(of("approach-needle")).toEqual(["cannot tell", "log-ends-on-final"]);
  const led = { ...record, findings: record.findings.filter(({ code }) => code !== "final-within") };
  const end = approachNotes(led, found.facts).find(([lead]) => lead === "The end.")!;
  expect(end[1]).toMatch(/^The log ends in flight/);
});

it("what was off until then is not met, and a log that ends below the decision altitude shows the whole", () => {
  expect(verdicts(0.4, 1.5).of("approach-needle")[0]).toBe("not met");
  expect(verdicts(0, 0.2).of("approach-needle")[0]).toBe("met");
});

it("in the roll, slowed from 90 kt to 60 and not yet slow, it shows a landing; in flight over the runway it does not", () => {
  const ends = (rows: ReturnType<typeof straightIn>) => measured(approachTo(FIELD), rows).facts.outcome;
  const path = (b: number) => Math.min(1650, beam(Math.max(b, 0)) - 50 * Number(b <= 0));
  const rolled = straightIn(9, () => 0, path);
  const roll = straightIn(9, () => 0, path, { roll: false }).length;
  // 3 kt a second: after ten seconds 60 kt, where 90 / 1.3 are 69
  expect(ends(rolled.slice(0, roll + 11))).toBe("landed");
  expect(ends(rolled.slice(0, roll))).not.toBe("landed");
});
