/** An arc in words: the sentence over the drawing, and the notes beside it. */

import type { ArcFacts, ArcRecord, Finding } from "../../debrief/document.ts";
import { ARC_WORDS, offArc, toStation, windFromStation } from "./arc-finding.ts";
import { compassNote } from "./compass.ts";
import { heightReachedNote } from "./height-reached.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { capital, clock, degreesDoubt, flownDirection, percent, plain, plusMinus } from "./number.ts";
import { judgedNote, partNote } from "./part.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";
import { restsOn } from "./wind.ts";

const CAUSES = new Set([
  ...["arc-wind-uncorrected", "arc-under-corrected", "arc-over-corrected", "arc-corrected-wrong-way"],
  ...["arc-heading-off", "arc-cannot-tell"],
]);
const REASONS: Readonly<Record<string, string>> = {
  "no-times": "the log has no times",
  "wind-not-known": "the wind here is not known from this log",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "turn-in-silence":
    "the log is silent in a turn onto it or off it, so where that began and ended is not told",
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
};

/** The sentence of the most telling finding. */
export function arcSentence({ findings }: ArcRecord, facts: ArcFacts): string {
  const lead = findings[0];
  const told =
    (lead && ARC_WORDS[lead.code]?.(lead.facts, lead)) ?? `Farthest ${offArc(facts.deviation.maxNm)}.`;
  if (lead?.code === "arc-cut-short" && facts.part && !facts.part.before)
    return `${told}${judgedNote(facts.part, facts.judged.distanceNm)}`;
  return `${told}${partNote(facts.part, facts.judged.distanceNm, "its first radial", "its last radial")}`;
}

/** The finding that says why, where the first one does not. */
export const arcCause = ({ findings }: ArcRecord): Finding | undefined =>
  findings.slice(1).find(({ code }) => CAUSES.has(code));

function cost({ deviation, judged }: ArcFacts): string {
  const when = deviation.maxUtc ? ` at ${clock(deviation.maxUtc)} UTC` : "";
  const on = flownDirection(deviation.maxRadialTrueDeg, deviation.maxRadialMagneticDeg);
  const doubt = ` (${plusMinus(deviation.doubt95Nm, 2, " NM")})`;
  return `Farthest ${offArc(deviation.maxNm)}${doubt} on radial ${on}${when}; within half a mile ${percent(deviation.withinHalfNm)} of the ${judged.shareOf}, within one mile ${percent(deviation.withinOneNm)}.`;
}

function remedy({ whatWouldHaveWorked: w, facts }: ArcRecord): string | null {
  const [first, last] = [w?.headings[0], w?.headings.at(-1)];
  if (!w || !first || !last || !facts) return null;
  const one = ({ headingTrueDeg, headingMagneticDeg, radialTrueDeg, radialMagneticDeg }: typeof first) =>
    `${flownDirection(headingTrueDeg, headingMagneticDeg)} on radial ${flownDirection(radialTrueDeg, radialMagneticDeg)}`;
  const turn =
    w.leadRadialTrueDeg === null
      ? ""
      : ` A standard-rate turn off it begins on radial ${flownDirection(w.leadRadialTrueDeg, w.leadRadialMagneticDeg)}.`;
  return `Headings from ${one(first)} to ${one(last)} hold it in this wind ${degreesDoubt(w.doubt95Deg)}.${turn}${compassNote(facts.variation)}`;
}

function windNote({ wind, windOutKt, windCorrection, turns, part }: ArcFacts): string | null {
  if (!wind || windOutKt === null || !windCorrection) return null;
  const outward = turns === "right" ? -1 : 1;
  return `${restsOn(wind)}: over ${part ? "what was flown of the arc" : "the whole arc"} ${windFromStation(windOutKt)} in the mean, which needs ${toStation(windCorrection.neededDeg * outward)}; flown ${toStation(windCorrection.flownDeg * outward)}.`;
}

function untold({ cannotTell }: ArcFacts): string | null {
  const reasons = [...new Set(cannotTell.map(({ reason }) => REASONS[reason] ?? plain(reason)))];
  return reasons.length === 0 ? null : `${capital(reasons.join("; "))}.`;
}

/** The distance is over the ground: a DME reads the slant. Said from where it shows on one. */
function slant({ dmeReadsMoreNm }: ArcFacts): string | null {
  if (dmeReadsMoreNm === null || dmeReadsMoreNm < 0.05) return null;
  return `They are over the ground; at this height a DME reads ${dmeReadsMoreNm.toFixed(2)} NM more.`;
}

/** The notes beside the drawing, in reading order; null where there is nothing to say. */
export function arcNotes(exercise: ArcRecord, facts: ArcFacts): [string, string | null][] {
  const cause = arcCause(exercise);
  return [
    ["Why.", cause ? (ARC_WORDS[cause.code]?.(cause.facts, cause) ?? null) : null],
    ["What it came to.", cost(facts)],
    ["What would have worked.", remedy(exercise)],
    ["The wind rests on", windNote(facts)],
    ["Distances.", slant(facts)],
    ["Height.", heightReachedNote(facts.altitude)],
    ["What cannot be told.", untold(facts)],
  ];
}
