/** A hold in words: the sentence over the drawing, the notes beside it, and a line a lap. */

import type { HoldFacts, HoldLap, HoldRecord } from "../../debrief/document.ts";
import { outboundClock } from "../../quantity/outbound-clock.ts";
import { compassNote, flownCourse, flownHeading } from "./compass.ts";
import { findingSentence } from "./finding.ts";
import { heightReachedNote } from "./height-reached.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { clockFrom, FACTOR_DOUBT, flownTurns, multiple, pastCourse, pastOf, times } from "./hold-finding.ts";
import { seconds } from "./measured.ts";
import { capital, degreesDoubt, degreesToSide, plain, plusMinus } from "./number.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";
import { restsOn, windHeadline } from "./wind.ts";

const REASONS: Readonly<Record<string, string>> = {
  "wind-not-known": "the wind here is not known from this log, and so no correction, bank or racetrack",
  "wind-along-only": "only part of the wind is known here, and so no correction, bank or racetrack",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
  "doubt-holds-limit": "the speed is so near the holding limit that its doubt holds the limit",
};

const NO_RACETRACK = {
  "wind-too-strong": "no heading holds the inbound course at this airspeed",
  "does-not-close": "the turns alone are carried farther than an outbound leg of that length can undo",
} as const;

const FLAGS = {
  "correction-over-45": " That is over 45°, more than is flown in practice.",
  "outbound-outside-15-to-180-s": " That is under 15 s or over 3 min, which is not flown in practice.",
} as const;

/** The most telling finding. */
export function holdSentence(exercise: HoldRecord, facts: HoldFacts): string {
  const lead = exercise.findings[0];
  if (lead) return findingSentence(lead, exercise);
  return `${facts.laps.length === 1 ? "One lap" : `${facts.laps.length} laps`} flown.`;
}

/** What this day asked for, and what the rules of thumb would have led to. */
function asked(facts: HoldFacts): string | null {
  const { solved, solvedDoubt: doubt, wind } = facts;
  if (!solved || !wind) return null;
  const day = `Wind ${windHeadline(wind).replace("From", "from").replace("Calm", "calm")}`;
  if ("none" in solved && solved.none === "inbound-too-short")
    return `${day}: in it no racetrack closes${lengthOf(facts).replace("; that makes", " with")}, as the turns alone are carried so far out that the inbound leg takes ${Math.round(solved.leastInboundS)} s without any outbound leg.`;
  if ("none" in solved) return `${day}: in it no racetrack closes, as ${NO_RACETRACK[solved.none]}.`;
  const inbound = degreesToSide(solved.inboundCorrectionDeg);
  const degrees = (size: number | undefined) => (size === undefined ? "" : ` ${degreesDoubt(size)}`);
  const sure = solved.factor !== null && doubt?.factor95 != null && doubt.factor95 <= FACTOR_DOUBT;
  const factor = sure ? `${times(solved.factor!)} that outbound, ` : "";
  const heading = flownHeading(solved.outboundHeadingTrueDeg, facts.variation);
  const clock = outboundClock(solved);
  const seconds = `${Math.round(clock.seconds)} s${doubt ? ` (${plusMinus(doubt.outbound95S, 0, " s")})` : ""}`;
  const flags = solved.flags.map((flag) => FLAGS[flag]).join("");
  return (
    `${day}: the inbound course needs ${inbound === "0°" ? "no correction" : inbound}${degrees(doubt?.inboundCorrection95Deg)}. This day asked for ${factor}heading ${heading}, ` +
    `${degreesToSide(solved.outboundCorrectionDeg)}${degrees(doubt?.outboundCorrection95Deg)}, for ${seconds} ${clockFrom(clock.begins)}${lengthOf(facts)}.${flags}${rules(facts)}${compassNote(facts.variation)}`
  );
}

/** What the legs of the racetrack are meant to be, as in "; that makes 60 s inbound". */
function lengthOf({ leg, timing }: HoldFacts): string {
  if (leg.by === "distance") return `; that ends ${leg.distanceNm} NM from the fix`;
  return timing === "us" ? `; that makes ${Math.round(leg.seconds)} s inbound` : "";
}

/** Of the last lap whose wind is known: the rules were worked out lap by lap. */
function rules(facts: HoldFacts): string {
  const { solved } = facts;
  const lap = facts.laps.findLast(({ rules: r }) => r.length > 0);
  if (!lap || !solved || "none" in solved || solved.factor === null) return "";
  const [once, ...more] = lap.rules.map(({ factor, missNm }) => ({
    factor: multiple(factor),
    out: pastCourse(pastOf(missNm, facts.turns)),
  }));
  if (!once) return "";
  const others = more.map(({ factor, out }, i) => `${i === more.length - 1 ? " and" : ","} ${factor} ${out}`);
  return ` After ${Math.round(lap.rules[0]!.outboundS)} s outbound, ${once.factor} the inbound correction would have rolled out ${once.out}${others.join("")}.`;
}

/** As in "heading 251°M"; the track where the wind is not known. */
export const entryDirection = (
  { headingIs, headingTrueDeg }: NonNullable<HoldFacts["entry"]>,
  { variation }: HoldFacts,
): string =>
  `${headingIs} ${(headingIs === "heading" ? flownHeading : flownCourse)(headingTrueDeg, variation)}`;

/** Why no entry is told, to follow "what entry was flown"; null where one is. */
export function entryUntold({ flown, untold }: NonNullable<HoldFacts["entry"]>): string | null {
  if (flown !== null) return null;
  if (untold === "log-begins")
    return "cannot be told: the log begins in flight, in the hold or close before it";
  if (untold === "wrong-way")
    return "by the sectors of this hold cannot be told: the turns were flown to the other side";
  return "is not clear, and so not which passage of the fix was the arrival";
}

function entry(facts: HoldFacts): string | null {
  const { entry: e } = facts;
  if (!e) return null;
  const nose = entryDirection(e, facts);
  const miss = `the fix was passed ${e.fixMissNm.toFixed(2)} NM off`;
  const untold = entryUntold(e);
  if (untold && e.untold !== "wrong-way") return `What entry was flown ${untold}.`;
  const flown = untold ? `What entry it was ${untold}` : `${capital(e.flown!)} entry`;
  const told =
    e.flown === e.asked
      ? `, as ${nose} at the fix asks`
      : e.flown !== null && e.alsoAllowed.includes(e.flown)
        ? `; ${nose} at the fix asks for ${e.asked}, and lies within 5° of the border, where either is accepted`
        : `; ${nose} at the fix asks for ${e.asked}`;
  const out = e.outbound;
  const leg = out
    ? ` Its outbound leg took about ${Math.round(out.seconds)} s on a track ${offOutbound(out.trackOffDeg)}.`
    : "";
  return `${flown}${told}; ${miss}.${leg}`;
}

function offOutbound(degrees: number): string {
  const size = Math.round(Math.abs(degrees));
  if (size === 0) return "straight back along the course";
  return `${size}° toward the ${degrees > 0 ? "holding" : "non-holding"} side`;
}

/** How a hold that no brief asked for was come by. */
function found(exercise: HoldRecord, facts: HoldFacts): string | null {
  if (exercise.source !== "found") return null;
  if (facts.loneLap)
    return "It was found in the track and is told by itself. Whether a hold was meant, at what fix and with what entry, one lap does not show: it is held against nothing.";
  const fix = facts.fix.doubt95Nm === null ? "" : ` (${plusMinus(facts.fix.doubt95Nm, 2, " NM")})`;
  const course = facts.inbound95Deg === null ? "" : ` (± ${Math.max(1, Math.ceil(facts.inbound95Deg))}°)`;
  const sure = facts.sure === false ? " The inbound course is not sure: it is held against itself only." : "";
  const circuit = facts.maybeCircuit
    ? " A racetrack, maybe a traffic circuit: neither a height nor a runway tells them apart."
    : "";
  return `It was found in the track; no brief names it. Its fix${fix} and inbound course${course} are taken from the laps themselves.${sure}${circuit}`;
}

function untold(facts: HoldFacts): string | null {
  const reasons = [...new Set(facts.cannotTell.map(({ reason }) => reason))];
  if (reasons.length === 0) return null;
  return `${capital(reasons.map((r) => REASONS[r] ?? plain(r)).join("; "))}.`;
}

/** Why a first lap with an inbound leg of another time is no fault. */
function learnedFrom({ laps, leg, timing }: HoldFacts): string | null {
  if (timing !== "us" || leg.by !== "time" || laps[0]?.legOff?.leg !== "outbound") return null;
  return `Its outbound leg was flown for ${Math.round(leg.seconds)} s, to learn from; it is judged by that, not by its inbound leg.`;
}

/** As in "The log ends in flight, 93 s after the last pass of the fix, in a lap that is not among those told." */
function lapCut({ lapCut: cut }: HoldFacts): string | null {
  const span = ({ fromUtc, toUtc }: { readonly fromUtc: string; readonly toUtc: string }) =>
    `${Math.round((Date.parse(toUtc) - Date.parse(fromUtc)) / 1000)} s`;
  const told = [
    cut?.before
      ? `begins in flight, ${span(cut.before)} before the first pass of the fix that is told here, as in a lap`
      : null,
    cut?.after ? `ends in flight, ${span(cut.after)} after the last pass of the fix, as in a lap` : null,
  ].filter((part) => part !== null);
  if (told.length === 0) return null;
  return `The log ${told.join("; it ")}: that is not among the laps told and judged, and what lies beyond the log is not known.`;
}

/** The notes beside the drawing, in reading order; null where there is nothing to say. */
export function holdNotes(exercise: HoldRecord, facts: HoldFacts): [string, string | null][] {
  return [
    ["How it was found.", found(exercise, facts)],
    ["What this wind asked for.", facts.loneLap ? null : asked(facts)],
    ["Entry.", entry(facts)],
    ["Time of lap 1.", learnedFrom(facts)],
    ["Laps not seen whole.", lapCut(facts)],
    ["Height.", heightReachedNote(facts.altitude)],
    ["The wind rests on", facts.wind?.knowledge === "full" ? `${restsOn(facts.wind)}.` : null],
    ["What cannot be told.", untold(facts)],
  ];
}

/** As in "52 s"; with how far it may be off where the log is silent at an end. */
const legTime = ({ seconds, unseen }: Pick<HoldLap["outbound"], "seconds" | "unseen">): string =>
  `${Math.round(seconds)} s${unseen ? ` (${plusMinus(unseen.most, 0, " s")})` : ""}`;

/** One lap in a line, as in "Lap 1: outbound 66 s from wings level, 9° right; inbound 52 s; rolled out 0.41 NM past the course." */
export function lapSentence(lap: HoldLap, index: number, facts: HoldFacts): string {
  const { outbound, inbound, rollOut } = lap;
  const correction = outbound.correctionDeg === null ? "" : `, ${degreesToSide(outbound.correctionDeg)}`;
  const parts = [
    `outbound ${legTime(outbound)} ${clockFrom(outbound.begins)}${correction}`,
    inbound ? `inbound ${legTime(inbound)}` : "not flown to the fix again",
    ...(rollOut
      ? [
          `rolled out ${pastCourse(pastOf(rollOut.acrossNm, flownTurns(facts)))}${rollOut.silentS === undefined ? "" : ` (${plusMinus(rollOut.across95Nm, 2, " NM")}, in ${seconds(rollOut.silentS)} without a point)`}`,
        ]
      : []),
  ];
  return `Lap ${index + 1}: ${parts.join("; ")}.`;
}
