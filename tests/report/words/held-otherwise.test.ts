/** By construction: another hold at the fix of one that was not found, in words. */
import { expect, it } from "vitest";
import type { DocumentExercise, Finding } from "../../../src/debrief/document.ts";
import { exerciseSentence } from "../../../src/report/index.ts";

function said(facts: Finding["facts"]): string {
  const found: Finding = {
    code: "held-otherwise",
    facts: { laps: 3, courseTrueDeg: 250, courseMagneticDeg: 247, doubt95Deg: 2, turns: "left", ...facts },
    evidence: { fromUtc: "2026-10-17T09:04:10Z", toUtc: "2026-10-17T09:17:40Z" },
  };
  return exerciseSentence({
    kind: "hold",
    facts: null,
    match: null,
    findings: [found],
  } as unknown as DocumentExercise);
}

it.each([
  [
    { offDeg: -20, otherSide: false },
    "a hold was flown, 09:04 to 09:17 UTC, on 247°M (± 2°), 20° left of its inbound course.",
  ],
  [
    { offDeg: 0.3, otherSide: true },
    "a hold was flown, 09:04 to 09:17 UTC, on 247°M (± 2°), its inbound course, but with turns to the left.",
  ],
  [
    { offDeg: 90, otherSide: true, laps: 1 },
    "a lap was flown, 09:04 to 09:17 UTC, on 247°M (± 2°), 90° right of its inbound course, and with turns to the left.",
  ],
])("%j", (facts, words) => {
  expect(said(facts)).toBe(`Not found as the brief gives it; at its fix ${words}`);
});
