/** A verdict in words gives the value that decided, its doubt, and how sure it is where the doubt reaches over the limit. */
import { describe, expect, it } from "vitest";
import { type Criterion, judge } from "../../../src/grade/criterion.ts";
import { standardNamed } from "../../../src/grade/index.ts";
import { debriefText } from "../../../src/report/text.ts";
import { decidedBy, decidingVerdict, verdictSentence } from "../../../src/report/words/verdict.ts";
import { verdictValue } from "../../../src/report/words/verdict-value.ts";
import { sampleDebrief } from "../../support/debriefed.ts";

const US = standardNamed("instrument-rating-us")!;
/** Judged to one side, as a height above a minimum. */
function above(value: number, doubt95: number, limit: number) {
  const criterion: Criterion<null | object> = {
    id: "above",
    title: "Above the minimum",
    unit: "ft",
    limit: () => ({ limit, edge: "within", citation: "made for this test" }),
    find: () => ({ value, oneSided: true, doubt95, beyond: null, worstUtc: null }),
  };
  return judge([criterion], {}, US)[0]!;
}

describe("the value shown is the one that was judged", () => {
  it("22 ft on the side that is never out is shown so, and with its doubt lies inside", () => {
    const verdict = above(-22, 102, 100);
    expect(verdict).toMatchObject({ verdict: "met", value: -22 });
    expect(verdictValue(verdict)).toBe("−22 ± 102 ft");
    expect(verdictSentence(verdict)).toBe(
      "met: above the minimum, −22 ± 102 ft, limit 100 ft (made for this test).",
    );
  });
  it("words fit the sign: the side that the title does not name is named, and the value of the document is the one said", () => {
    const entry = (value: number) => ({
      ...{ ...above(value, 1, 5), criterion: "hold-entry", title: "Entry, heading outside its sector" },
      ...{ unit: "deg" as const, citation: "made" },
    });
    expect(entry(-81).value).toBe(-81);
    expect(verdictSentence(entry(-81))).toBe(
      "met: entry, heading outside its sector, 81 ± 1° inside it, limit 5° (made).",
    );
    expect(verdictSentence(entry(10))).toBe(
      "not met: entry, heading outside its sector, 10 ± 1°, limit 5° (made).",
    );
    expect(decidedBy(entry(-81))).toBe("entry, heading outside its sector, 81° inside it, limit 5°");
    const low = { ...above(-122, 131, 100), criterion: "approach-minimum-above" };
    expect(verdictValue(low)).toBe("122 ± 131 ft below it");
    // as documents of earlier versions have it
    expect(verdictValue({ ...low, value: 0, toward: -122 })).toBe("122 ± 131 ft below it");
  });
  it("met though the 95 % to both sides reach over the limit: how sure it is stands with it", () => {
    // P(x < (100 - 20) / (90 / 1.96)) = 0.9592, Abramowitz, Stegun, table 26.1
    expect(verdictSentence(above(20, 90, 100))).toBe(
      "met: above the minimum, 20 ± 90 ft, limit 100 ft; 95 % sure, though the doubt reaches over it (made for this test).",
    );
  });
  it("none past a limit of nothing is not ranked over one past a limit", () => {
    const worse = above(190, 80, 100);
    expect(decidingVerdict([above(-200, 90, 0), worse])).toBe(worse);
  });
});

it("the text has every verdict that the document has", async () => {
  const { document } = await sampleDebrief("approach-below-minimum");
  const text = debriefText(document).replace(/\s+/g, " ");
  const verdicts = document.exercises.flatMap((e) => e.verdicts);
  expect(verdicts.some(({ reason }) => reason === "height-by-gps")).toBe(true);
  for (const verdict of verdicts)
    expect(text.toLowerCase()).toContain(verdictSentence(verdict).toLowerCase());
});
