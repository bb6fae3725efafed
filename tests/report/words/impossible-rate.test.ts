/** Common practice, no source: a light aircraft in training descends at 500 to 1,500 ft/min; a rate that none flies is not asked for. */
import { expect, it } from "vitest";
import { DESCENT_WORDS } from "../../../src/report/words/descent.ts";

const late = (neededDownFpm: number): string => {
  const facts = {
    toGoNm: 0.6,
    downFpm: 600,
    basis: "as-flown",
    beginToGoNm: 9,
    lateNm: 8.4,
    lateS: 300,
    neededDownFpm,
  };
  const finding = { code: "descent-begun-late", facts, evidence: { fromUtc: null, toUtc: null } };
  return DESCENT_WORDS["descent-begun-late"]!(facts, finding);
};

it("a rate that can be flown is told as needed, an impossible one not", () => {
  expect(late(1240)).toContain("From where it began 1,240 ft/min was needed.");
  expect(late(8690)).toContain("From where it began no usable rate of descent would have reached it.");
  expect(late(8690)).not.toContain("8,690");
});
