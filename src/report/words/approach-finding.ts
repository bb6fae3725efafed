/** Findings of approaches as sentences. */

import type { Finding } from "../../debrief/document.ts";
import { unstable, unsteady } from "./approach-gates.ts";
import { CAUSE_WORDS } from "./cause.ts";
import { directionFact, type FindingWords, given, num } from "./fact.ts";
import { feet, miles, needleWords, rate, seconds, wentOn } from "./measured.ts";
import { clock, count, degreesToSide } from "./number.ts";
import { TRACK_OFF_WORDS } from "./track-off.ts";

/** As in "3.1 NM before the threshold"; "over the threshold". */
export function beforeThreshold(nm: unknown): string {
  const size = num(nm);
  if (Math.abs(size) < 0.05) return "over the threshold";
  return `${miles(size)} ${size > 0 ? "before" : "past"} the threshold`;
}

/** As in "in 32 seconds without a point, 0.4 NM before to 0.2 NM past the threshold". */
export function unseenWhere(silentS: unknown, fromNm: unknown, toNm: unknown): string {
  const [from, to] = [num(fromNm), num(toNm)];
  const side = (nm: number) => (nm > 0 ? "before" : "past");
  const first = side(from) === side(to) ? miles(from).replace(" NM", "") : `${miles(from)} ${side(from)}`;
  return `in ${seconds(silentS)} without a point, ${first} to ${miles(to)} ${side(to)} the threshold`;
}

/** Whether a height below a limit is beyond the doubt of the log's height against the altimeter's. */
const told = (f: Finding["facts"]): string => {
  const doubt = given(f.doubt95Ft);
  if (f.sure === true) return ` (± ${feet(doubt)})`;
  return doubt === null
    ? ", as far as the log tells"
    : `, but this log tells the altimeter’s height only to ± ${feet(doubt)}`;
};

/** As in "90 ft above the threshold"; within 5 ft of it, "as high as the threshold". */
const aboveThreshold = (ft: number): string =>
  Math.abs(ft) < 5
    ? "as high as the threshold"
    : `${feet(Math.abs(ft))} ${ft > 0 ? "above" : "below"} the threshold`;

function climbed(f: Finding["facts"]): string {
  if (given(f.silentS) !== null)
    return `begun ${unseenWhere(f.silentS, f.silentFromNm, f.silentToNm)}; climbing at ${rate(f.climbFpm)} over the first minute after that, the track ${trackHeld(f)}.`;
  const past = num(f.pastMissedPointNm);
  const where =
    Math.abs(past) < 0.05
      ? "at the missed approach point"
      : `${miles(past)} ${past > 0 ? "past" : "before"} the missed approach point`;
  return `begun ${beforeThreshold(f.distanceNm)}, ${where}${given(f.heightFt) === null ? "" : `, ${aboveThreshold(num(f.heightFt))}`}${f.downToIt === "yes" ? "" : fromMinimum(f)}${afterLevel(f)}; climbing at ${rate(f.climbFpm)} over the first minute, the track ${trackHeld(f)}.`;
}

/** How high above or below the minimum a climb was begun, where the brief gives one. */
function fromMinimum(f: Finding["facts"]): string {
  const [above, doubt] = [given(f.aboveMinimumFt), given(f.aboveMinimum95Ft)];
  if (above === null) return "";
  const name = f.minimum === "descent" ? "the minimum descent altitude" : "the decision altitude";
  if (f.downToIt === "no")
    return `, ${feet(above)}${doubt === null ? "" : ` (± ${feet(doubt)})`} above ${name}, which it never came down to`;
  if (doubt !== null) {
    if (Math.abs(above) <= doubt) return `, at ${name} as far as this log tells (± ${feet(doubt)})`;
    return `, ${feet(Math.abs(above))} (± ${feet(doubt)}) ${above > 0 ? "above" : "below"} ${name}`;
  }
  const size = feet(Math.abs(above));
  return size === "0 ft" ? `, at ${name}` : `, ${size} ${above > 0 ? "above" : "below"} ${name}`;
}

/** As in ", after 0.6 NM flown level": where a climb away was put off so. */
const afterLevel = (f: Finding["facts"]): string =>
  given(f.levelNm) === null ? "" : `, after ${miles(f.levelNm)} flown level in ${seconds(f.levelS)}`;

/** Against the course that the brief gives the missed approach, else against the final's. */
function trackHeld(f: Finding["facts"]): string {
  const error = given(f.courseErrorDeg);
  if (error === null) {
    const track = Math.round(num(f.trackErrorDeg));
    return track === 0 ? "on the final course" : `${degreesToSide(track)} of the final course`;
  }
  const course = `its course ${directionFact(f, "course")}`;
  const off = Math.round(error) === 0 ? `on ${course}` : `${degreesToSide(Math.round(error))} of ${course}`;
  const never = f.turnedOnto === false ? ", which was never turned onto" : "";
  return `${off} in the mean, ${degreesToSide(Math.round(num(f.courseWorstDeg)))} at worst${never}`;
}

/** Below a decision altitude on a missed approach: how far, and where the climb was begun. */
function sank(f: Finding["facts"]): string {
  const [climb, ground] = [given(f.climbBelowFt), given(f.groundFt)];
  const size = climb === null ? "" : feet(Math.abs(climb));
  const at = size === "0 ft" ? "at it" : `${size} ${num(climb) > 0 ? "below" : "above"} it`;
  const near = ground === null ? "" : ` ${touched(ground, num(f.ground95Ft))}`;
  const silent = given(f.climbSilentS);
  if (silent !== null)
    return `The lowest point of the log is ${feet(f.belowFt)} below the decision altitude of ${count(num(f.altitudeFt))} ft${told(f)}; the climb was begun in ${seconds(silent)} without a point, and how low it came is not known.${near}`;
  const begun = climb === null ? "" : `; the climb was begun ${at}, ${beforeThreshold(f.climbNm)}`;
  return `Sank to ${feet(f.belowFt)} below the decision altitude of ${count(num(f.altitudeFt))} ft${told(f)}${begun}.${near}`;
}

const touched = (ground: number, doubt: number): string =>
  `The lowest was ${aboveThreshold(ground)} (± ${feet(doubt)}), so that a touch is not ruled out.`;

/** The runway's other end, as in "04" of "22", "09R" of "27L"; null where the ident is none of a runway. */
function otherEnd(ident: unknown): string | null {
  const [, number, side] = /(?:^|\D)([0-3]?\d)([LCR]?)$/.exec(String(ident)) ?? [];
  if (!number || Number(number) < 1 || Number(number) > 36) return null;
  const other = String(((Number(number) + 17) % 36) + 1).padStart(2, "0");
  return `${other}${side ? { L: "R", C: "C", R: "L" }[side] : ""}`;
}

/** As in " at 940 ft, the minimum 920 ft". */
function heightBesideMinimum({ altitudeFt, minimumFt }: Finding["facts"]): string {
  const [height, minimum] = [given(altitudeFt), given(minimumFt)];
  const beside = minimum === null ? "" : `, the minimum ${count(minimum)} ft`;
  return height === null ? "" : ` at ${feet(height)}${beside}`;
}

/** A final that was left by a turn away, and the landing that it led to. */
function leftFinal(f: Finding["facts"]): string {
  const left = `Left the final by a turn to the ${f.side} ${beforeThreshold(f.distanceNm)}${heightBesideMinimum(f)}`;
  if (f.landed === null) return `${left}; no landing on this field followed.`;
  const other = otherEnd(f.runway);
  const where = {
    same: "on the same runway",
    "other-way": other === null ? "on the same runway the other way" : `on runway ${other}`,
    across: "on this field, on another runway",
  }[String(f.landed)];
  return `${left}; circled and landed ${where}.`;
}

/** As in ", over the threshold at 50 ft, 62 kt over the ground". */
function overThreshold(f: Finding["facts"]): string {
  const height = given(f.thresholdFt);
  if (given(f.silentS) !== null)
    return `, over the threshold in ${seconds(f.silentS)} without a point${height === null ? "" : `: at ${feet(height)} ± ${feet(f.threshold95Ft)}`}`;
  return `${height === null ? "" : `, over the threshold at ${feet(height)}`}, ${Math.round(num(f.groundSpeedKt))} kt over the ground`;
}

/** `times`: in all; `asked`: by exercises of the brief; `last`: none was flown after this; `lastWhole`: none whole. */
function flownAgain(
  { times, asked, last, lastWhole }: Finding["facts"],
  { evidence: { fromUtc, toUtc } }: Finding,
): string {
  const when = fromUtc && toUtc ? ` from ${clock(fromUtc)} to ${clock(toUtc)} UTC` : "";
  const several = num(asked ?? 1) > 1;
  const others = num(times) - num(asked ?? 1);
  const whole = lastWhole === true ? "the last that was flown whole" : "the one that fits best";
  const which = several
    ? `the brief asks for ${asked} of them. ${others > 1 ? "The first other one" : "The other one"}`
    : `this is ${last === true ? "the last time" : whole}. ${others > 1 ? "The first other one" : "The other"}`;
  return `Flown ${times} times on this flight; ${which} was on the final${when}; written into the brief for each time, or with between, it is measured too.`;
}

export const APPROACH_WORDS: Readonly<Record<string, FindingWords>> = {
  ...TRACK_OFF_WORDS,
  ...CAUSE_WORDS,
  "below-step-down": (f) =>
    `${feet(f.belowFt)} below ${count(num(f.limitFt))} ft before passing ${f.name}${told(f)}.`,
  "below-minimum": (f) =>
    `Down to ${feet(f.belowFt)} below the minimum descent altitude of ${count(num(f.altitudeFt))} ft${told(f)}.`,
  "level-below-minimum": (f) =>
    `Level for ${seconds(f.seconds)} ${feet(f.belowFt)} below the minimum descent altitude of ${count(num(f.altitudeFt))} ft, ${miles(f.fromNm).replace(" NM", "")} to ${miles(f.toNm)} before the threshold${told(f)}. Below it a descent to land is by right once the runway is in sight, which no log shows.`,
  "sank-below-decision": sank,
  "unstable-at-gate": unstable,
  "unsteady-at-gate": unsteady,
  "final-never-joined": () =>
    "Never established on the final, which takes the needle within half scale and the track within 10° of the course for 10 seconds.",
  "procedure-turn-far": (f) =>
    `The procedure turn went ${miles(f.farthestNm)} from ${f.from === "threshold" ? "the threshold" : f.from}; unless a procedure says otherwise ${num(f.limitNm)} NM are allowed.`,
  "final-overshot": (f) =>
    `The intercept at ${Math.round(num(f.angleDeg))}° went ${num(f.overshootNm).toFixed(2)} NM past the final to the ${f.side}, ${needleWords(f.overshootNeedle)}, until the turn onto it was over${wentOn(f)}.`,
  "joined-inside-final-fix": (f) =>
    `Established only ${miles(f.joinedNm)} before the threshold, inside ${f.fix}${given(f.needle) === null ? "" : `, which was passed with the needle ${needleWords(f.needle)} off`}.`,
  "final-chased": (f) =>
    `The track swung from side to side ${f.reversals} times on the final, ${num(f.perMinute).toFixed(1)} a minute of all that is judged${given(f.amplitudeDeg) === null ? "" : `, typically ${Math.round(num(f.amplitudeDeg))}° to each side`}${given(f.periodS) === null ? "" : ` and back in ${Math.round(num(f.periodS))} seconds`}: the needle was chased.`,
  "final-within": (f) =>
    num(f.worstNeedle) > 1
      ? `The needle went over full scale, ${Math.abs(num(f.worstNm)).toFixed(2)} NM off, ${beforeThreshold(f.worstAtNm)}.`
      : `The needle stayed within ${needleWords(f.worstNeedle)} on the final.`,
  "glide-path-within": (f) =>
    num(f.worstNeedle) > 1
      ? `Over full scale ${f.side} the glide path, ${feet(Math.abs(num(f.worstFt)))}, ${beforeThreshold(f.worstAtNm)}.`
      : num(f.worstNeedle) > 0.5
        ? `The glide path needle reached ${needleWords(f.worstNeedle)}, ${feet(Math.abs(num(f.worstFt)))} ${f.side} the path, ${beforeThreshold(f.worstAtNm)}.`
        : `The glide path was held within ${needleWords(f.worstNeedle)}, worst ${feet(Math.abs(num(f.worstFt)))} ${f.side} it.`,
  "left-minimum-early": (f) =>
    `The minimum of ${count(num(f.altitudeFt))} ft was left ${miles(f.leftNm)} before the threshold; a descent on ${num(f.angleDeg)}° begins ${miles(f.visualDescentPointNm)} before it.`,
  "missed-approach": (f) => `Missed approach ${climbed(f)}`,
  /** The same in one breath, for a headline. */
  "missed-approach-short": (f) =>
    given(f.silentS) !== null
      ? `Missed approach begun ${unseenWhere(f.silentS, f.silentFromNm, f.silentToNm)}.`
      : `Missed approach begun ${beforeThreshold(f.distanceNm)}${fromMinimum(f)}${afterLevel(f)}.`,
  "low-pass": (f) =>
    `A touch or a low pass${given(f.levelS) === null ? "" : `, level over the runway for ${seconds(f.levelS)}`}, then a climb ${climbed(f)} Whether that was a landing or a go-around cannot be told from its heights and speeds.`,
  "left-final": leftFinal,
  "log-ends-in-flight": (f) =>
    `The log ends in flight ${beforeThreshold(f.distanceNm)}${heightBesideMinimum(f)}; how the approach ended is not known.`,
  "flown-again": flownAgain,
  landed: (f) => `Landed${overThreshold(f)}.`,
  "touch-and-go": (f) =>
    `Touch-and-go${overThreshold(f)}; slowed to ${Math.round(num(f.slowestKt))} kt on the runway ${beforeThreshold(f.slowestNm)}, climbing again ${beforeThreshold(f.climbNm)}.`,
};
