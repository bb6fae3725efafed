/** A finding as a sentence: what was seen, how much, when; no sentence says more than its facts. */

import type { CourseFacts, DocumentExercise, Finding } from "../../debrief/document.ts";
import { APPROACH_WORDS } from "./approach-finding.ts";
import { ARC_WORDS } from "./arc-finding.ts";
import { CAUSE_WORDS } from "./cause.ts";
import { DESCENT_WORDS } from "./descent.ts";
import { given, num } from "./fact.ts";
import { HOLD_WORDS } from "./hold-finding.ts";
import { needleSize, needleWords, seconds, wentOn } from "./measured.ts";
import { clock, clockSeconds, degreesToSide, offCourse, percent, plain } from "./number.ts";
import { TRACK_OFF_WORDS } from "./track-off.ts";

type Words = (facts: Finding["facts"], finding: Finding, exercise: DocumentExercise) => string;

/** What was kept within, or what it came to past full scale. */
const kept = (needle: unknown): string => `${num(needle) > 1 ? "Up to" : "Within"} ${needleSize(needle)}`;

/** As in " In the 120 seconds between two points it may have been up to 0.94 NM."; nothing where no more than was seen. */
export function unseenTail({ unseenNm, unseenNeedle, unseenS }: Finding["facts"]): string {
  if (given(unseenNm) === null) return "";
  const between = given(unseenS) === null ? "Between two points" : `In ${seconds(unseenS)} without a point`;
  const needle = given(unseenNeedle);
  const shown = needle === null ? "" : `, ${needleWords(needle)}`;
  return ` ${between} it may have been up to ${num(unseenNm).toFixed(2)} NM off${shown}.`;
}

const WORDS: Readonly<Record<string, Words>> = {
  "tracked-within": (f, _, e) => {
    const worst = num(f.worstNm);
    const line = e.source === "fitted" ? "the fitted line" : "course";
    const off = offCourse(worst).replace("course", line);
    return e.source === "fitted"
      ? `Straight to within ${Math.abs(worst).toFixed(2)} NM of the line fitted to it${unseenTail(f) && " at the points of the log"}.${unseenTail({ ...f, unseenNeedle: null })}`
      : `${kept(f.worstNeedle)}${unseenTail(f) && " where the log shows it"}; farthest ${off}.${unseenTail(f)}`;
  },
  "never-established": (f) =>
    `Never established on the course, which takes the needle within half scale and the track within 10° of the course for 10 seconds. The worst was ${needleSize(f.worstNeedle)}, ${offCourse(num(f.worstNm))}.`,
  chased: (f) =>
    `The track swung from side to side ${f.reversals} times, ${num(f.perMinute).toFixed(1)} a minute of all that is judged${given(f.amplitudeDeg) === null ? "" : `, typically ${Math.round(num(f.amplitudeDeg))}° to each side`}${given(f.periodS) === null ? "" : ` and back in ${Math.round(num(f.periodS))} seconds`}: the needle was chased.`,
  "intercept-overshot": (f) =>
    `The intercept at ${Math.round(num(f.angleDeg))}° went ${num(f.overshootNm).toFixed(2)} NM past the course to the ${f.side}, ${needleWords(f.overshootNeedle)}, until the turn onto it was over${wentOn(f)}.${given(f.turnBeganPastNm) === null ? "" : ` That turn came late: it began ${num(f.turnBeganPastNm).toFixed(2)} NM past the course.`}`,
  "flown-as-well": (f, { evidence: { fromUtc, toUtc } }) =>
    `It was flown ${f.earlier === true ? "before that" : "later"} too${fromUtc && toUtc ? `, from ${clock(fromUtc)} to ${clock(toUtc)} UTC` : ""}, which is not judged; written into the brief once more, or with between, that is measured too.`,
  "straight-beside": (f) => {
    const off = Math.round(num(f.offDeg));
    return Math.abs(off) < 2
      ? `One straight track was flown beside the course, ${offCourse(num(f.meanNm))} in the mean.`
      : `One straight track was flown, ${degreesToSide(off)} of the course, from ${offCourse(num(f.fromNm))} to ${offCourse(num(f.toNm))}.`;
  },
  "turned-aside": (f, { evidence }) =>
    `${evidence.fromUtc ? `At ${clockSeconds(evidence.fromUtc)} UTC the` : "The"} track turned to ${Math.round(num(f.degrees))}° ${f.side} of the course and did not come back, ${offCourse(num(f.farthestNm))}${evidence.toUtc ? ` at ${clock(evidence.toUtc)} UTC` : ""}. A log does not show whether the exercise was over then; what came after is not judged.`,
  "judged-in-part": (f, finding) =>
    `Only ${seconds(f.judgedS)} of the ${seconds(f.windowS)} that the brief gives are judged, from ${finding.evidence.fromUtc ? `${clock(finding.evidence.fromUtc)} UTC on, when` : "where"} it was first established on the course. Before that it was flown along the course up to ${offCourse(num(f.worstNm))}, ${needleWords(f.worstNeedle)}.`,
  "gap-in-exercise": (f) =>
    `The log is silent for ${seconds(f.silentS)} within this exercise${num(f.gaps) === 1 ? "" : ` (${f.gaps} gaps, the longest ${seconds(f.longestS)})`}: what was flown then was not seen.`,
  "gap-beside-exercise": (f, { evidence }) =>
    `The log is silent for ${seconds(f.silentS)}${evidence.fromUtc ? ` from ${clock(evidence.fromUtc)} UTC on` : ""}: what of this exercise was flown then is not known.`,
  ...CAUSE_WORDS,
  ...TRACK_OFF_WORDS,
  ...APPROACH_WORDS,
  ...ARC_WORDS,
  ...DESCENT_WORDS,
};

/** A code without words is still told. */
export function findingSentence(finding: Finding, exercise: DocumentExercise): string {
  if (exercise.kind === "hold" && exercise.facts) {
    const words = HOLD_WORDS[finding.code];
    if (words) return words(finding.facts, exercise.facts, exercise);
  }
  return WORDS[finding.code]?.(finding.facts, finding, exercise) ?? `${plain(finding.code)}.`;
}

/** As in "beyond a quarter 28 % of the time, beyond half 6 %"; empty where the needle stayed under a quarter. */
export function beyondWords(needle: CourseFacts["needle"], of: string): string {
  const steps: [string, number][] = [
    ["a quarter", needle.beyondQuarter],
    ["half", needle.beyondHalf],
    ["three quarters", needle.beyondThreeQuarter],
    ["full scale", needle.beyondFull],
  ];
  return steps
    .filter(([, part]) => part > 0)
    .map(
      ([name, part], i) =>
        `beyond ${name} ${part < 0.005 ? "under 1 %" : percent(part)}${i === 0 ? ` of the ${of}` : ""}`,
    )
    .join(", ");
}
