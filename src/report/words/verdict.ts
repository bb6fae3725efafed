/** Verdicts in words and numbers, and which of them decides an exercise. */

import type { Overrule, Verdict } from "../../debrief/document.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { seconds } from "./measured.ts";
import { clock, clockSeconds, count } from "./number.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";

const REASONS: Readonly<Record<string, string>> = {
  "doubt-straddles-limit": "the doubt reaches over the limit",
  "log-silent": "between two points of the log it may have passed the limit",
  "passed-in-silence": "the log is silent there, and the height is known no better",
  "leg-end-silent": "the log is silent where the leg began or ended, and its length is known no better",
  "climb-without-height": "it ended higher than it began, and the brief gives no altitude to hold",
  "descent-without-height": "it ended lower than it began, and the brief gives no altitude to hold",
  "climb-all-along":
    "it was climbed all along toward the briefed altitude and never there, so whether it would have been held is not seen",
  "descent-all-along":
    "it was descended all along toward the briefed altitude and never there, so whether it would have been held is not seen",
  "level-elsewhere-before":
    "it was flown level at another height for a while before the briefed altitude was come to, and a log does not show whether that was cleared",
  "log-ends": "the log ends before it, in flight",
  "log-ends-on-final": "the log ends in flight before the final did, and what followed is not known",
  "never-established": "the course was never established on, and what was judged is no flying along it",
  "final-never-joined": "the final was never established on, and what was judged is no flying along it",
  "lap-never-established":
    "a lap was flown without ever being established on the inbound course, which is no keeping of it",
  "log-begins": "the log begins after it, in flight",
  "log-silent-there": "the log is silent where it may have been flown",
  "points-left-out": "much of the log could not be used, and it may have been flown then",
  "part-of-window":
    "only a part of the time that the brief gives is judged, and before it, along the course, the needle was past the limit",
  "height-by-gps": "a GPS height is too far from an altimeter’s to tell",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "brief-excursion": "the standard lets brief excursions be and does not say how long they last",
  "holding-rules-not-named":
    "the standard does not say whose holding rules count (holding: us or icao), and so which leg is timed",
  "runway-length-assumed": "the length of the runway is not known, and with it the width of the needle",
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
  "left-for-landing":
    "a landing goes below it by right, and a log does not show when the runway came in sight",
  "maybe-touched": "over the runway a touch is not ruled out, and a landing goes below it by right",
  "no-missed-approach":
    "no missed approach was flown; with the runway in sight a landing goes below it by right",
  "turned-away": "no missed approach was flown; the final was left by a turn away",
  "turned-away-above": "the final was left by a turn away above it",
  "turned-away-before": "the final was left by a turn away before it",
  "climbed-above": "the missed approach was begun above it, and it was never flown down to",
  "climbed-before": "the missed approach was begun before it",
  "fix-not-passed": "the final fix was not passed on the way in",
  "gate-not-passed": "the log does not pass that height on the way down the final",
  "minimum-not-reached":
    "the final was left above it, and the height is not known well enough to say how far",
  "crossing-not-known": "the log does not show the height there",
  "wind-not-known": "the wind is not known here, and with it no heading or airspeed",
  "entry-not-clear": "what entry was flown is not clear",
  "no-whole-leg": "no leg was flown to its end",
  "course-not-flown-inbound": "the inbound course was never flown to the fix",
  "wrong-way": "the turns were flown to the other side",
  "no-times": "the log has no times",
  "joined-near-station":
    "the inbound course was joined within a mile of the station, where a needle is not judged",
  "near-station": "it was within a mile of the station then, where a needle is not judged",
  "all-near-station": "all of it was flown within a mile of the station",
  "fault-in-criterion": "this criterion failed; that is a fault of the program",
};

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

const DIGITS: Readonly<Record<Verdict["unit"], number>> = {
  share: 2,
  NM: 2,
  ft: 0,
  "ft/min": 0,
  kt: 0,
  s: 0,
  deg: 0,
  side: 0,
};

function amount(value: number, unit: Verdict["unit"]): string {
  if (unit === "ft/min") return count(Math.round(value / 10) * 10); // as rates are told everywhere
  return unit === "ft" ? count(value) : value.toFixed(DIGITS[unit]);
}
const unitWords = (unit: Verdict["unit"]): string =>
  unit === "share" ? "" : unit === "deg" ? "°" : ` ${unit}`;

/** What a value on the side that is never out is said to be: its title names the other one. */
const OTHER_SIDE: Readonly<Record<string, string>> = {
  "hold-entry": "inside it",
  "approach-minimum-below": "above it",
  "approach-decision-below": "above it",
  "approach-minimum-above": "below it",
  "approach-decision-above": "below it",
  "approach-step-down": "above it",
  "descent-below": "above it",
  "approach-gate-1000-sink": "up",
  "approach-gate-500-sink": "up",
};

/** Negative on the side that is never out. */
const sideValue = ({ value, toward }: Verdict): number | null => (value === null ? null : (toward ?? value));

/** A size with its unit, and in words the side that the title does not name, as in "22 ft above it". */
function sidedValue(verdict: Verdict, size: string): string {
  const { criterion, unit } = verdict;
  const value = sideValue(verdict)!;
  const shown = Number(amount(Math.abs(value), unit).replace(",", "")) > 0;
  if (value >= 0 || !shown) return size;
  const side = OTHER_SIDE[criterion];
  return side === undefined ? `−${size}` : `${size} ${side}`;
}

/** As in "0.86 ± 0.04" or "52 ± 60 ft", "22 ± 102 ft above it" on the side that is never out; a dash where there is none. */
export function verdictValue(verdict: Verdict): string {
  const { doubt95, unit } = verdict;
  const value = sideValue(verdict);
  if (value === null) return "–";
  const least = 10 ** -DIGITS[unit];
  const doubt = doubt95 === null ? "" : ` ± ${amount(Math.max(doubt95, least), unit)}`;
  return sidedValue(verdict, `${amount(Math.abs(value), unit)}${doubt}${unitWords(unit)}`);
}

/** As in "0.75 of full scale", "100 ft". */
export function verdictLimit({ limit, unit }: Verdict): string {
  if (limit === null) return "–";
  if (unit === "share") return limit.toFixed(2);
  return `${unit === "NM" ? limit : count(limit)}${unitWords(unit)}`;
}

/** As in "over 99 %"; the confidence of a verdict, or nothing. */
export function verdictConfidence({ confidence, verdict }: Verdict): string {
  if (confidence === null) return "";
  const percent = Math.floor(confidence * 100);
  if (verdict === "cannot tell") return `${percent} % inside`;
  return percent >= 99 ? "over 99 %" : `${percent} %`;
}

/** Why it cannot be told, without capital and full stop; empty for other verdicts. */
export function verdictReason({ reason, fault, silentS, worstUtc }: Verdict): string {
  if (reason === null) return "";
  if (reason === "log-silent" && silentS != null)
    return `the log is silent for ${seconds(silentS)}, and it may have passed the limit then`;
  if (reason === "doubt-straddles-limit" && worstUtc)
    return `${REASONS[reason]}, at ${clockSeconds(worstUtc)} UTC`;
  const words = REASONS[reason] ?? reason.replaceAll("-", " ");
  return fault ? `${words} (${fault})` : words;
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
  const size = unit === "share" ? " of full scale" : unitWords(unit);
  return `${name}, ${sidedValue(verdict, `${amount(Math.abs(value), unit)}${size}`)}, limit ${verdictLimit(verdict)}`;
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
