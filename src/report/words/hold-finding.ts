/** A finding of a hold as a sentence: what was flown, what this wind asked for, what it came to. */

import type { Finding, HoldFacts, HoldRecord } from "../../debrief/document.ts";
import { flownCourse, flownHeading } from "./compass.ts";
import { given, num } from "./fact.ts";
import { count, degreesDoubt, degreesToSide } from "./number.ts";

export type HoldWords = (facts: Finding["facts"], hold: HoldFacts, exercise: HoldRecord) => string;

const whole = (seconds: unknown): string => `${Math.round(num(seconds))} seconds`;
const doubt = (degrees: unknown): string => degreesDoubt(num(degrees));

/** Where it lies, coming from the side of the racetrack: past the course, short of it, or on it. */
export function pastCourse(past: number): string {
  const size = Math.abs(past).toFixed(2);
  return Number(size) === 0 ? "on the course" : `${size} NM ${past > 0 ? "past" : "short of"} the course`;
}

/** The side that was turned to: that of the hold, unless it was flown the other way. */
export const flownTurns = (hold: HoldFacts): "left" | "right" => hold.asFlown?.turns ?? hold.turns;

/** A distance right of the inbound course as one past it. */
export const pastOf = (acrossNm: number, turns: "left" | "right"): number =>
  turns === "right" ? -acrossNm : acrossNm;

/** A ratio in greater doubt than this is not worth its figures. Own choice. */
export const FACTOR_DOUBT = 1;

export const times = (factor: number): string => `${factor.toFixed(1)} times`;

const MULTIPLES: Readonly<Record<number, string>> = { 1: "once", 2: "twice", 3: "three times" };
/** A factor of the rules of thumb as a pilot says it. */
export const multiple = (factor: number): string => MULTIPLES[factor] ?? times(factor);

/** "1", "1 and 3", "1, 3 and 4". */
function listed(laps: string): string {
  const all = laps.split(" ");
  const last = all.pop()!;
  return all.length > 0 ? `${all.join(", ")} and ${last}` : last;
}

function corrected(f: Finding["facts"], tail: string): string {
  const flown = `Lap ${f.lap}: outbound correction ${degreesToSide(num(f.flownDeg))}`;
  const asked = `${degreesToSide(num(f.askedDeg))} ${doubt(f.asked95Deg)}`;
  const rolled = given(f.rollOutNm) === null ? "" : ` Rolled out ${pastCourse(num(f.rollOutNm))}.`;
  const known = [f.factor95, f.askedFactor95].every((d) => given(d) !== null && num(d) <= FACTOR_DOUBT);
  const sum =
    !known || num(f.factor) < 0
      ? `; this wind asked for ${asked}.`
      : `, ${times(num(f.factor))} the inbound one; this wind asked for ${times(num(f.askedFactor))}, ${asked}.`;
  return `${flown}${sum}${rolled}${tail}`;
}

/** What laps were flown like it. */
const also = (f: Finding["facts"]): string => {
  const laps = String(f.alsoLaps ?? "");
  return laps === "" ? "" : ` Likewise in ${laps.includes(" ") ? "laps" : "lap"} ${listed(laps)}.`;
};

function cutBack(f: Finding["facts"]): string {
  const error = num(f.trackErrorDeg);
  if (Math.abs(error) < 10) return "";
  return `, on a track ${Math.round(Math.abs(error))}° to the ${error > 0 ? "right" : "left"} of it`;
}

const rolledOut =
  (sign: 1 | -1): HoldWords =>
  (f) =>
    `Lap ${f.lap} rolled out ${pastCourse(sign * num(f.offNm))}${cutBack(f)}.${also(f)}`;

/** Where the clock of an outbound leg was started: one rule for all that is told of its time. */
export const clockFrom = (begins: unknown): string =>
  begins === "abeam" ? "from abeam the fix" : "from wings level";

function legTime(f: Finding["facts"]): string {
  const took = `Lap ${f.lap}: the ${f.leg} leg took ${whole(f.seconds)}`;
  if (f.leg === "outbound") return `${took} ${clockFrom(f.begins)}, not ${Math.round(num(f.askedS))}.`;
  const from = f.solvedBegins === f.begins ? "" : ` ${clockFrom(f.solvedBegins)}`;
  const asked =
    given(f.solvedOutboundS) === null
      ? ""
      : `; this wind asked for ${whole(f.solvedOutboundS)} outbound${from}`;
  return `${took}, not ${Math.round(num(f.askedS))}, after ${whole(f.outboundS)} outbound ${clockFrom(f.begins)}${asked}.`;
}

/** As in "lap 2", "laps 1 and 3". */
const lapsNamed = (laps: unknown): string =>
  `${String(laps).includes(" ") ? "laps" : "lap"} ${listed(String(laps))}`;

/** Of all laps, or of those that it is true of; then what the others came on. */
function otherCourse(f: Finding["facts"], hold: HoldFacts): string {
  const course = (trueDeg: unknown) => flownCourse(num(trueDeg), hold.variation);
  const meant = `this hold’s ${flownCourse(hold.inboundTrueDeg, hold.variation)}`;
  const off = `${course(f.flownTrueDeg)} ${doubt(f.doubt95Deg)}, ${degreesToSide(num(f.offDeg))} of ${meant}`;
  if (f.laps === undefined) return `The inbound legs were flown on ${off}.`;
  const [from, to] = [f.othersFromTrueDeg, f.othersToTrueDeg].map(
    (d) => given(d ?? null) !== null && course(d),
  );
  const range = from === to ? from : `${from} to ${to}`;
  if (f.laps === "") return `The inbound legs were flown on no one course but on ${range}, not on ${meant}.`;
  const others = f.otherLaps === "" ? "" : `; ${lapsNamed(f.otherLaps)} came in on ${range}`;
  return `In ${lapsNamed(f.laps)} the inbound leg was flown on ${off}${others}.`;
}

const ENTRY = { direct: "a direct", teardrop: "a teardrop", parallel: "a parallel" } as const;
const entry = (fact: unknown): string => `${ENTRY[fact as keyof typeof ENTRY]} entry`;

function wellFlown(f: Finding["facts"]): string {
  const laps = num(f.laps) === 1 ? "One lap" : `${f.laps} laps`;
  const each = num(f.laps) === 1 ? "" : "each ";
  const rolled =
    given(f.worstRollOutNm) === null
      ? "flown"
      : `${each}rolled out within ${Math.max(0.01, num(f.worstRollOutNm)).toFixed(2)} NM of the course`;
  if (given(f.shortestS) === null || f.leg === null) return `${laps}, ${rolled}.`;
  const [least, most] = [Math.round(num(f.shortestS)), Math.round(num(f.longestS))];
  const legs = least === most ? `${f.leg} ${least} seconds` : `${f.leg} legs of ${least} to ${most} seconds`;
  return `${laps}, ${rolled}; ${legs}.`;
}

export const HOLD_WORDS: Readonly<Record<string, HoldWords>> = {
  "turned-wrong-way": (f) => `Turned to the ${f.flown}; this hold is flown with turns to the ${f.published}.`,
  "other-inbound-course": otherCourse,
  "entry-not-by-sector": (f, hold) =>
    `Entered by ${entry(f.flown)}; the heading at the fix, ${flownHeading(num(f.headingTrueDeg), hold.variation)} ${doubt(f.doubt95Deg)}, asks for ${entry(f.asked)}.`,
  "outbound-parallel": (f) =>
    corrected(f, ` The outbound leg was nearly parallel to the inbound one.${also(f)}`),
  "outbound-undercorrected": (f) => corrected(f, also(f)),
  "outbound-overcorrected": (f) => corrected(f, also(f)),
  "inbound-never-established": ({ laps }) =>
    `Never established on the inbound course in ${String(laps).includes(" ") ? "laps" : "lap"} ${listed(String(laps))}: that takes the needle within half scale and the track within 10° of the course for 10 seconds.`,
  "rolled-out-past": rolledOut(1),
  "rolled-out-short": rolledOut(-1),
  "leg-time-off": legTime,
  "leg-distance-off": (f) =>
    `Lap ${f.lap}: the outbound leg ended ${num(f.endedNm).toFixed(1)} NM from the fix, not ${num(f.askedNm).toFixed(1)} NM.`,
  "laps-in-silence": (f) =>
    `The log is silent for ${whole(f.seconds)} here: laps or legs flown then are not told, and later laps are counted on from those before.`,
  "leg-end-in-silence": (f) =>
    `Lap ${f.lap}: the log is silent for ${whole(f.silentS)} at an end of the ${f.leg} leg, whose time may be off by ${whole(f.mostS)}.`,
  "over-speed-limit": (f) =>
    `The indicated airspeed was about ${Math.round(num(f.indicatedKt))} kt (± ${Math.ceil(num(f.doubt95Kt))} kt, estimated from the true one and the height), over the holding limit of ${Math.round(num(f.mostKt))} kt.`,
  "height-not-held": (f) =>
    `The height in the log went from ${count(num(f.lowestFt))} to ${count(num(f.highestFt))} ft in the hold.`,
  "on-non-holding-side": (f) =>
    `It went ${num(f.farthestNm).toFixed(2)} NM beyond the inbound course, on the non-holding side for ${whole(f.seconds)} in all; that is geometry, not the procedure’s protected airspace.`,
  "hold-well-flown": wellFlown,
};
