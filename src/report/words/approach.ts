/** An approach in words: the sentence over the drawing, and the notes beside it. */

import type { ApproachFacts, ApproachRecord, Finding } from "../../debrief/document.ts";
import { datum, gateNote, wayDown } from "./approach-descent.ts";
import { APPROACH_WORDS, beforeThreshold } from "./approach-finding.ts";
import { saysWhy } from "./cause.ts";
import { compassNote } from "./compass.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { feet, miles, needleWords, rate, seconds } from "./measured.ts";
import { capital, clockSeconds, count, degreesToSide, flownDirection, percent, plain } from "./number.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";
import { restsOn } from "./wind.ts";

const REASONS: Readonly<Record<string, string>> = {
  "no-times": "the log has no times, so no rates and no parts",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "all-near-station": "all of the final was flown within a mile of the station, where a needle is not judged",
  "runway-length-assumed":
    "the length of the runway is not known, and with it the width of the needle: a usual one is taken",
  "height-unit": `${HEIGHT_UNIT}, so nothing is told of the way down`,
  "no-height": "the log has no heights, so nothing is told of the way down",
  "height-not-anchored":
    "the log says nothing of what its heights count from and shows no roll on this field to tie them to",
  "elevation-not-known": "the elevation of the runway is not known, so nothing is told of heights above it",
  "fix-not-passed": "the final fix was not passed on the way in",
  "no-missed-course": "the brief gives no course for the missed approach, so its track is not judged",
  "wind-not-known": "the wind here is not known from this log",
  "wind-along-only": "only the wind along the final is known, not the wind across it",
};

const JOINED: Readonly<Record<string, string>> = {
  vectors: "A cut",
  "procedure-turn": "A procedure turn, then a cut",
  arc: "An arc, then a cut",
  hold: "A lap of a hold, then a cut",
  "straight-in": "Straight in, a cut",
};

const spoken = (code: string, { findings }: ApproachRecord, as = code): string | null => {
  const found = findings.find((f) => f.code === code);
  return found ? (APPROACH_WORDS[as]?.(found.facts, found) ?? null) : null;
};

/** The most telling finding; of an approach with nothing else to tell, how well it was held and how it ended. */
export function approachSentence(exercise: ApproachRecord): string {
  const [lead] = exercise.findings;
  if (!lead) return "Nothing can be told of this approach.";
  const sentence = APPROACH_WORDS[lead.code]?.(lead.facts, lead) ?? `${capital(plain(lead.code))}.`;
  if (lead.code === "final-overshot") return `${sentence}${leftOut(exercise)}`;
  if (lead.code !== "final-within") return sentence;
  const path = spoken("glide-path-within", exercise);
  const end =
    spoken("landed", exercise) ??
    spoken("touch-and-go", exercise) ??
    spoken("left-final", exercise) ??
    spoken("log-ends-in-flight", exercise) ??
    spoken("missed-approach", exercise, "missed-approach-short");
  return [sentence, path, end].filter((words) => words !== null).join(" ");
}

/** As in " What came before it was joined, at 09:16:02 UTC, is not judged."; empty where it is. */
function leftOut({ facts }: ApproachRecord): string {
  const joinedUtc = facts?.intercept?.joinedUtc;
  const fromUtc = facts?.judged.fromUtc;
  if (!joinedUtc || !fromUtc || joinedUtc > fromUtc) return "";
  return ` What came before it was joined, at ${clockSeconds(joinedUtc)} UTC, is not judged.`;
}

function joining({ intercept: i, joinedFrom }: ApproachFacts): string | null {
  if (!i || !joinedFrom) return null;
  const led = JOINED[joinedFrom] ?? "A cut";
  const cut = `${joinedFrom === "circuit" ? "A circuit, and the turn onto the final" : `${led} of ${Math.round(Math.abs(i.angleDeg))}°`} from ${miles(i.startCrossTrackNm)} ${i.startCrossTrackNm > 0 ? "right" : "left"} of the final`;
  const past = i.overshootNm < 0.005 ? "" : ` after ${i.overshootNm.toFixed(2)} NM past the final`;
  const corrections =
    i.corrections === 0
      ? ""
      : `; ${i.corrections === 1 ? "one correction" : `${i.corrections} corrections`} in the two minutes after`;
  const unseen = i.silentS === undefined ? "" : `; ${seconds(i.silentS)} of it without a point`;
  return `${cut}; established ${beforeThreshold(i.joinedDistanceNm)}${past}${corrections}${unseen}.`;
}

function reversal({ procedureTurn: turn }: ApproachFacts): string | null {
  if (!turn) return null;
  const from = turn.outboundFrom === "final-fix" ? `from ${turn.farthestFrom}` : "from the turn outbound";
  const leg = turn.awayS === null ? "" : `, ${seconds(turn.awayS)} between the turns`;
  const size = (degrees: number) => `${Math.round(Math.abs(degrees))}° ${degrees > 0 ? "right" : "left"}`;
  const { crossTrackNm, trackErrorDeg } = turn.rollOut;
  const off = `${Math.abs(crossTrackNm).toFixed(2)} NM ${crossTrackNm > 0 ? "right" : "left"} of the final`;
  const track = Math.round(trackErrorDeg);
  const cut = track === 0 ? "along it" : `${degreesToSide(trackErrorDeg)} of it`;
  return `A ${turn.kind} to the ${turn.side}: ${seconds(turn.outboundS)} outbound ${from}, a turn of ${size(turn.awayTurnDeg)}${leg}, a turn of ${size(turn.backTurnDeg)}; rolled out ${off}, the track ${cut}. ${miles(turn.farthestNm)} from ${turn.farthestFrom === "threshold" ? "the threshold" : turn.farthestFrom} at the farthest.${turn.silentS === undefined ? "" : ` The log is silent for ${seconds(turn.silentS)} of it: turns and times are told only as far as the points show.`}`;
}

function overFix({ finalFix, finalFixPassage: p }: ApproachFacts): string | null {
  if (!finalFix || !p) return null;
  const wanted = finalFix.altitudeFt === null ? "" : `, briefed ${count(finalFix.altitudeFt)} ft`;
  // against a briefed height the altimeter counts, as in its verdict
  const doubt95 = finalFix.altitudeFt === null ? p.altitude95Ft : p.altimeter95Ft;
  const doubt = doubt95 === null ? "" : ` ± ${feet(doubt95)}${wanted === "" ? "" : " by the altimeter"}`;
  const height = p.altitudeFt === null ? "" : ` at ${feet(p.altitudeFt)}${doubt}${wanted}`;
  return `${finalFix.ident} at ${clockSeconds(p.utc)} UTC${height}${p.needle === null ? ", over the station or within a mile of it, where a needle is not judged" : `, the needle ${needleWords(p.needle)} off`}${p.needle95 === undefined ? "" : ` (± ${p.needle95.toFixed(2)})`}${p.silence ? `, all of it in ${seconds(p.silence.seconds)} without a point` : ""}${p.established ? "" : ", not yet established"}.`;
}

/** The needle and the path that the figures are of, and whether anybody said so. */
function heldAgainst({ source }: ApproachRecord, { guidance, glidePath }: ApproachFacts): string {
  const path = glidePath
    ? `; ${glidePath.supposed ? `a path of ${glidePath.angleDeg}° as a glide path would show` : glidePath.label.replace(/^G/, "g")}`
    : "";
  const found = source === "found" ? " No brief says what was flown: found by the runway of the list." : "";
  return `${guidance.label}${path}.${found}`;
}

/** As in "at most 0.43 of full scale". */
const atMost = (needle: number): string => `${Math.abs(needle) > 1 ? "" : "at most "}${needleWords(needle)}`;

/** The final against its course and path. */
function cost({ crossTrack, needle, glidePath, flownPath, trackAngleError }: ApproachFacts): string {
  const beyond = needle.beyondHalf > 0 ? `, beyond half ${percent(needle.beyondHalf)} of the time` : "";
  const lateral = `Needle ${atMost(needle.max)}, ${Math.abs(crossTrack.maxNm).toFixed(2)} NM ${crossTrack.maxNm > 0 ? "right" : "left"} at the farthest${beyond}`;
  const side = glidePath && glidePath.worstFt > 0 ? "above" : "below";
  const vertical = glidePath
    ? `; ${glidePath.supposed ? "against a path of" : "glide path"} ${glidePath.angleDeg}°: ${atMost(glidePath.needle.max)} ${side}, ${feet(Math.abs(glidePath.worstFt))}`
    : "";
  const angle = flownPath
    ? `; flown down a line of ${flownPath.angleDeg.toFixed(1)}° (± ${Math.max(0.1, flownPath.angle95Deg).toFixed(1)}°)`
    : "";
  const aside = trackAngleError && degreesToSide(trackAngleError.meanDeg);
  const error =
    aside === null ? "" : `; the track ${aside === "0°" ? "along" : `${aside} of`} the course in the mean`;
  return `${lateral}${vertical}${angle}${error}.`;
}

function remedy(
  { whatWouldHaveWorked: w }: ApproachRecord,
  { minimum, variation }: ApproachFacts,
): string | null {
  if (!w) return null;
  const heading =
    w.headingTrueDeg === null
      ? ""
      : `Heading ${flownDirection(w.headingTrueDeg, w.headingMagneticDeg)} holds the final in this wind.${compassNote(variation)} `;
  const point =
    w.visualDescentPointNm === null || minimum?.kind !== "descent"
      ? ""
      : ` From the minimum it begins ${miles(w.visualDescentPointNm)} before the threshold.`;
  return `${heading}${w.angleDeg.toFixed(1)}° at this ground speed is ${rate(w.descentFpm)} down.${point}`;
}

function untold({ cannotTell, notShown }: ApproachFacts): string {
  const reasons = [...new Set(cannotTell.map(({ reason }) => REASONS[reason] ?? plain(reason)))];
  const shown = notShown.map((what) => plain(what)).join(", ");
  return capital(
    [
      ...reasons,
      `of what stabilised criteria ask for, a log does not show ${shown.replace(/, ([^,]*)$/, " or $1")}`,
    ]
      .join("; ")
      .concat("."),
  );
}

/** The finding that says why, where the first one is a track that was off. */
export const approachCause = ({ findings: [lead, next] }: ApproachRecord): Finding | undefined =>
  lead?.code === "final-track-off" && next && saysWhy(next) ? next : undefined;

/** The notes beside the drawing, in reading order; null where there is nothing to say. */
export function approachNotes(exercise: ApproachRecord, facts: ApproachFacts): [string, string | null][] {
  const lead = exercise.findings[0]?.code;
  const ended = [
    "missed-approach",
    "low-pass",
    ...(lead === "final-within" ? [] : ["left-final", "log-ends-in-flight", "landed", "touch-and-go"]),
  ];
  const cause = approachCause(exercise);
  return [
    ["Why.", cause ? (APPROACH_WORDS[cause.code]?.(cause.facts, cause) ?? null) : null],
    ["The procedure turn.", reversal(facts)],
    ["Onto the final.", joining(facts)],
    ["Over the final fix.", overFix(facts)],
    ["Held against.", heldAgainst(exercise, facts)],
    ["What it came to.", cost(facts)],
    ["The way down.", wayDown(facts)],
    ...facts.gates.map((gate): [string, string | null] => [
      `${count(gate.heightFt)} ft above the threshold.`,
      gateNote(gate),
    ]),
    ["The end.", ended.map((code) => spoken(code, exercise)).find((words) => words !== null) ?? null],
    ["What would have worked.", remedy(exercise, facts)],
    ["The wind rests on", facts.wind?.knowledge === "full" ? `${restsOn(facts.wind)}.` : null],
    ["Heights.", datum(facts)],
    ["What cannot be told.", untold(facts)],
  ];
}

/** Findings that the sentence and the notes tell in figures. */
export const APPROACH_TOLD: readonly string[] = [
  "final-within",
  "glide-path-within",
  "missed-approach",
  "low-pass",
  "left-final",
  "log-ends-in-flight",
  "landed",
  "touch-and-go",
];
