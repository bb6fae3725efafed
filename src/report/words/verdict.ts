/** Verdicts as sentences, and which of them decides an exercise. */
import type { Overrule, Verdict } from "../../debrief/document.ts";
import { needleSize } from "./measured.ts";
import { clock } from "./number.ts";
import { verdictReason } from "./verdict-reason.ts";
import {
  amount,
  sidedValue,
  sideValue,
  unitWords,
  verdictConfidence,
  verdictLimit,
  verdictValue,
} from "./verdict-value.ts";

/** What a log never shows, so that nobody looks for it among the verdicts. */
export const NOT_JUDGED =
  "The airspeed indicator and the heading indicator are not in a log and are not judged; a speed that is judged is estimated from the log.";

/** As in "Needle, worst, from 19:30 UTC on" or "…, in 3 of 4 laps": with what is judged, where that is a part only. */
export const verdictTitle = ({ title, partFromUtc: from, laps }: Verdict): string =>
  [
    title,
    ...(from ? [`from ${clock(from)} UTC on`] : []),
    ...(laps ? [`in ${laps.judged} of ${laps.flown} laps`] : []),
  ].join(", ");

/** The same for the middle of a sentence. */
function nameOf(verdict: Verdict): string {
  const title = verdictTitle(verdict);
  return title.charAt(0).toLowerCase() + title.slice(1);
}

/** A verdict as it stands once the instructor has had a word. */
export interface Standing extends Verdict {
  readonly overrule: Overrule | null;
}

/** Each verdict, or the instructor's in its place: what was measured stays, why it could not be told goes. */
export function standing(verdicts: readonly Verdict[], overrules: readonly Overrule[]): Standing[] {
  return verdicts.map((verdict) => {
    const overrule = overrules.find((o) => o.criterion === verdict.criterion) ?? null;
    return overrule
      ? { ...verdict, verdict: overrule.verdict, reason: null, confidence: null, overrule }
      : { ...verdict, overrule };
  });
}

/** Whose verdict it is and why, as in "The instructor, A. N.: prompted twice." */
export const overruleWords = ({ verdict, by, why }: Overrule): string =>
  `The instructor${by && `, ${by}`}: ${verdict}${why && `; ${why}`}.`;

const RANK = { "not met": 3, "cannot tell": 2, met: 1, "not flown": 0 } as const;
/** A speed is no deviation: it is near its limit within so many kt of it. What the tests allow of an airspeed, FAA-S-ACS-8C, from memory. */
const SPEED_TOLERANCE = 10;
/** 1 at the limit, less inside; a speed far from its limit says less than anything that was held. What has no amount decides where it was not done, and nothing where it was. */
function shareOfLimit(found: Verdict): number {
  const { verdict, limit, unit } = found;
  const value = sideValue(found);
  if (unit === "side") return verdict === "not met" ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  // where nothing at all is allowed, any value is far past its limit, and none at it
  if (value === null || value <= 0 || limit === null) return 0;
  return unit === "kt" ? 1 + (value - limit) / SPEED_TOLERANCE : value / limit;
}
/** Whether a verdict says anything: a height that a GPS or a pressure cannot tell does not. */
export const says = (verdict: Verdict): boolean =>
  verdict.reason !== "height-by-gps" && verdict.reason !== "height-is-pressure";

/**
 * The verdict that decides: the worst, and of equals the one that lies nearest to its limit or farthest past it; one that
 * says nothing only where there is no other. Null without verdicts.
 */
export function decidingVerdict<V extends Verdict>(verdicts: readonly V[]): V | null {
  const ranked = verdicts.toSorted(
    (a, b) =>
      Number(says(b)) - Number(says(a)) ||
      RANK[b.verdict] - RANK[a.verdict] ||
      shareOfLimit(b) - shareOfLimit(a),
  );
  return ranked[0] ?? null;
}

/** What decided, as in "needle, worst, 0.86 of full scale, limit 0.75". */
export function decidedBy(verdict: Verdict): string {
  const { unit } = verdict;
  if (verdict.verdict === "not flown") return "";
  const name = nameOf(verdict);
  const value = sideValue(verdict);
  if (value === null) return [name, verdictReason(verdict)].filter((part) => part !== "").join(": ");
  const size = unit === "share" ? needleSize(value) : `${amount(Math.abs(value), unit)}${unitWords(unit)}`;
  return `${name}, ${sidedValue(verdict, size)}, limit ${verdictLimit(verdict)}`;
}

/** How sure a verdict is that is given though its 95 % interval, half of which counts to each side, reaches over the limit. */
function surely(verdict: Verdict): string {
  const { doubt95, limit } = verdict;
  const value = sideValue(verdict);
  if (value === null || doubt95 === null || limit === null || verdict.verdict === "cannot tell") return "";
  if (Math.abs(value - limit) >= doubt95) return "";
  const sure = verdictConfidence(verdict);
  return sure && `${sure} sure, though the doubt reaches over it`;
}

/** One line of the text: "not met: needle, worst, 0.86 ± 0.04 (limit 0.75), beyond it 29 s (FAA-S-ACS-8C …)". */
export function verdictSentence(verdict: Verdict): string {
  const { beyondS, citation } = verdict;
  const head = `${verdict.verdict}: ${nameOf(verdict)}`;
  const value = verdict.value === null ? "" : `, ${verdictValue(verdict)}`;
  const beyond = beyondS ? `, beyond it ${Math.round(beyondS)} s` : "";
  const limit = verdict.limit === null ? "" : `, limit ${verdictLimit(verdict)}`;
  const reason = [surely(verdict), verdictReason(verdict)].filter((part) => part !== "").join("; ");
  return `${head}${value}${limit}${beyond}${reason && `; ${reason}`} (${citation}).`;
}
