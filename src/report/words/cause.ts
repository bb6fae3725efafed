/** Why a course or a final was left, as sentences: with what was flown, what was needed, and the share of it. */
import type { Finding } from "../../debrief/document.ts";
import { type FindingWords, given, num } from "./fact.ts";
import { degreesDoubt, degreesToSide } from "./number.ts";
import { acrossWords } from "./wind.ts";

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
  `${degreesToSide(num(facts.neededDeg))} was needed ${degreesDoubt(num(facts.doubt95Deg))} with ${acrossWords(num(facts.windAcrossKt))}`;

export const CAUSE_WORDS: Readonly<Record<string, FindingWords>> = {
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
    `Why the track stood ${Math.round(num(f.degrees))}° ${f.side} of the course cannot be told: ${given(f.neededDeg) === null ? "the wind across it is not known" : `${causeTail(f)}, which may be nothing or enough to explain it`}.`,
  "turned-late": (f) =>
    `The turn onto the course came late: it ended ${num(f.byNm).toFixed(2)} NM ${f.side} of the course, past it.`,
  "turned-early": (f) =>
    `The turn onto the course came early: it ended along the course but ${num(f.byNm).toFixed(2)} NM ${f.side} of it.`,
};

/** Whether a finding says why. */
export const saysWhy = ({ code }: Finding): boolean => Object.hasOwn(CAUSE_WORDS, code);
