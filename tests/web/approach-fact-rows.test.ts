/** The table of an approach tells a height with the doubt that its sentence tells it with. */
import { expect, it } from "vitest";
import { approachFactRows } from "../../web/approach-fact-rows.ts";
import { approachTo, beam, FIELD, measured, straightIn } from "../support/flown-approach.ts";

const rows = straightIn(9, () => 0, beam);
const overFix = (briefed: boolean, shown = rows) => {
  const { facts } = measured(approachTo(FIELD, briefed ? {} : { finalFixAltitude: null }), shown);
  const row = approachFactRows(facts).find(({ fact }) => fact === "Over LUMDO")!;
  return { row, passage: facts.finalFixPassage! };
};

it("over a fix with a briefed height the altimeter’s doubt, else the log’s own", () => {
  const [briefed, bare] = [overFix(true), overFix(false)];
  expect(briefed.row.value).toMatch(new RegExp(`ft ± ${Math.round(briefed.passage.altimeter95Ft!)}$`));
  expect(briefed.row.note).toContain("by the altimeter");
  expect(bare.row.value).toMatch(new RegExp(`ft ± ${Math.round(bare.passage.altitude95Ft!)}$`));
  expect(Math.round(bare.passage.altitude95Ft!)).not.toBe(Math.round(bare.passage.altimeter95Ft!));
});

it("in a silence the needle has its doubt, with one space before it", () => {
  const silent = rows.filter(({ before }) => !(before < 5.5 && before > 4.5));
  expect(overFix(true, silent).row.note).toMatch(/; \d\.\d\d( [LR])? ± \d\.\d\d of full scale;/);
  expect(overFix(true).row.note).toMatch(/; \d\.\d\d( [LR])? of full scale/);
});
