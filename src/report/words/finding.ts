/** A finding as a sentence: what was seen, how much, when; no sentence says more than its facts. */

import type { CourseFacts, DocumentExercise, Finding } from "../../debrief/document.ts";
import { APPROACH_WORDS } from "./approach-finding.ts";
import { ARC_WORDS } from "./arc-finding.ts";
import { DESCENT_WORDS } from "./descent.ts";
import { given, num } from "./fact.ts";
import { HOLD_WORDS } from "./hold-finding.ts";
import { seconds } from "./measured.ts";
import { clock, degreesToSide, offCourse, percent, plain } from "./number.ts";
import { TRACK_OFF_WORDS } from "./track-off.ts";
import { acrossWords } from "./wind.ts";

type Words = (facts: Finding["facts"], finding: Finding, exercise: DocumentExercise) => string;

const share = (needle: unknown): string => `${Math.abs(num(needle)).toFixed(2)} of full scale`;

/** As in " That is about three quarters of it."; nothing where it is all of it. */
function shareTail({ share: of }: Finding["facts"]): string {
  const quarters = Math.round(num(of ?? 1) * 4);
  const names = ["less than a quarter", "about a quarter", "about half", "about three quarters"];
  return quarters >= 4 ? "" : ` That is ${names[quarters]} of it.`;
}

/** What a cause rests on, where the wind is known; else nothing. */
const windTail = (facts: Finding["facts"]): string =>
  given(facts.neededDeg) === null
    ? ""
    : `: ${degreesToSide(num(facts.flownDeg))} was flown, ${causeTail(facts)}`;

const causeTail = (facts: Finding["facts"]): string =>
  `${degreesToSide(num(facts.neededDeg))} was needed (± ${Math.max(1, Math.round(num(facts.doubt95Deg)))}°) with ${acrossWords(num(facts.windAcrossKt))}`;

/** As in " In the 120 seconds between two points it may have been up to 0.94 NM."; nothing where no more than was seen. */
export function unseenTail({ unseenNm, unseenNeedle, unseenS }: Finding["facts"]): string {
  if (given(unseenNm) === null) return "";
  const between = given(unseenS) === null ? "Between two points" : `In ${seconds(unseenS)} without a point`;
  const needle = given(unseenNeedle);
  const shown = needle === null ? "" : `, ${needle > 1 ? "over full scale" : share(needle)}`;
  return ` ${between} it may have been up to ${num(unseenNm).toFixed(2)} NM off${shown}.`;
}

const WORDS: Readonly<Record<string, Words>> = {
  "tracked-within": (f, _, e) => {
    const worst = num(f.worstNm);
    const line = e.source === "fitted" ? "the fitted line" : "course";
    const off = offCourse(worst).replace("course", line);
    return e.source === "fitted"
      ? `Straight to within ${Math.abs(worst).toFixed(2)} NM of the line fitted to it${unseenTail(f) && " at the points of the log"}.${unseenTail({ ...f, unseenNeedle: null })}`
      : `Within ${share(f.worstNeedle)}${unseenTail(f) && " where the log shows it"}; farthest ${off}.${unseenTail(f)}`;
  },
  "never-established": (f) =>
    `Never established on the course, which takes the needle within half scale and the track within 10° of the course for 10 seconds. The worst was ${share(f.worstNeedle)}, ${offCourse(num(f.worstNm))}.`,
  chased: (f) =>
    `The track swung from side to side ${f.reversals} times, ${num(f.perMinute).toFixed(1)} a minute${given(f.amplitudeDeg) === null ? "" : `, typically ${Math.round(num(f.amplitudeDeg))}° to each side`}${given(f.periodS) === null ? "" : ` and back in ${Math.round(num(f.periodS))} seconds`}: the needle was chased.`,
  "wind-uncorrected": (f) =>
    `The wind was left uncorrected: the heading was ${Math.abs(num(f.flownDeg)) < 0.5 ? "on the course" : `within ${Math.ceil(Math.abs(num(f.flownDeg)))}° of the course`}, and ${causeTail(f)}.${shareTail(f)}`,
  "under-corrected": (f) => `Too little wind correction${windTail(f)}.${shareTail(f)}`,
  "over-corrected": (f) => `Too much wind correction${windTail(f)}.${shareTail(f)}`,
  "corrected-wrong-way": (f) => `The heading was turned downwind${windTail(f)}.${shareTail(f)}`,
  "heading-off": (f) =>
    `The heading stood off, and the wind does not explain it${windTail(f)}.${shareTail(f)}`,
  "rolled-out-off": (f) =>
    `The turn onto the course ended on a track ${Math.round(num(f.degrees))}° ${f.side} of it, and that was left to stand${windTail(f)}.${shareTail(f)}`,
  "cannot-tell": (f) =>
    `Why the track stood ${Math.round(num(f.degrees))}° ${f.side} of the course cannot be told: ${given(f.neededDeg) === null ? "the wind here is not known" : `${causeTail(f)}, which may be nothing or enough to explain it`}.`,
  "turned-late": (f) =>
    `The turn onto the course came late: it ended ${num(f.byNm).toFixed(2)} NM ${f.side} of the course, past it.`,
  "turned-early": (f) =>
    `The turn onto the course came early: it ended along the course but ${num(f.byNm).toFixed(2)} NM ${f.side} of it.`,
  "intercept-overshot": (f) =>
    `The intercept at ${Math.round(num(f.angleDeg))}° went ${num(f.overshootNm).toFixed(2)} NM past the course to the ${f.side}, ${num(f.overshootNeedle) > 1 ? "over full scale" : share(f.overshootNeedle)}, before it came back.`,
  "judged-in-part": (f, finding) =>
    `Only ${seconds(f.judgedS)} of the ${seconds(f.windowS)} that the brief gives are judged, from ${finding.evidence.fromUtc ? `${clock(finding.evidence.fromUtc)} UTC on, when` : "where"} it was first established on the course. Before that it was flown along the course up to ${offCourse(num(f.worstNm))}, ${num(f.worstNeedle) > 1 ? "over full scale" : share(f.worstNeedle)}.`,
  "gap-in-exercise": (f) =>
    `The log is silent for ${seconds(f.silentS)} within this exercise (${num(f.gaps) === 1 ? "one gap" : `${f.gaps} gaps`}, the longest ${seconds(f.longestS)}); nothing is said about that time.`,
  "gap-beside-exercise": (f, { evidence }) =>
    `The log is silent for ${seconds(f.silentS)}${evidence.fromUtc ? ` from ${clock(evidence.fromUtc)} UTC on` : ""}: what of this exercise was flown then is not known.`,
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
