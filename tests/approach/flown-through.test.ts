/** A final that was flown through by a cut, and joined from the other side: told with the approach, though it was matched from the way back on. */
import { expect, it } from "vitest";
import type { ApproachRecord } from "../../src/debrief/document.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { approachTo, FIELD, measured, tracks } from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

/** From a mile left of it square to it, half a minute past it, and back on a cut of 45 degrees. */
const through = tracks(11, -1, [
  [90, 70],
  [-45, 45 + 53],
  [0, 420],
]);
const past = Math.max(...through.map(({ aside }) => aside));
const back = through.findIndex(({ aside }) => aside === past) + 25;

it.each([0, back])("is told by the farthest past it, matched from second %i on", (from) => {
  const { facts, findings } = measured(
    approachTo(FIELD, { finalFix: null, finalFixAltitude: null }),
    through,
    0,
    from,
  );
  expect(facts.joinedFrom).toBe("vectors");
  near(facts.intercept!.overshootNm, past, 0.02, "NM");
  near(facts.intercept!.angleDeg, 90, 2, "°");
  const told = findings.find(({ code }) => code === "final-overshot")!;
  expect(told.facts.side).toBe("right");
  expect(told.facts.overshootNeedle).toBeGreaterThan(1);
  // the needle of the verdict is from being established on: that the rest is not judged stands beside it
  const record = { kind: "approach", facts, findings, source: "brief" } as unknown as ApproachRecord;
  expect(exerciseSentence(record)).toMatch(
    /What came before it was joined, at \d\d:\d\d:\d\d UTC, is not judged\.$/,
  );
});
