/** Which laps are those of one hold where a brief asks for several at one fix: by the side of their turns and their way to the fix, and by where they end. */
import type { HoldExercise } from "../brief/brief.ts";
import type { FoundHold, FoundLap } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, NauticalMiles, Seconds, Share, TrueDegrees } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { type FixPass, madeGood } from "./fix-passes.ts";

/** The other side speaks as much for another hold as so much of course. Chosen: the cut to an inbound course. */
const OTHER_SIDE: AngleSize = 30;
/** A course found so far off is none of it. Chosen: the opposite one. What its laps came in on speaks more for it, so that a lap less is not taken for a course that fits better. */
const OTHER_COURSE: AngleSize = 180;
/** In no lap is the fix flown over, so near, but at its two ends, within so many seconds. Chosen: the outbound leg of the slowest hold is as far aside as its turn is wide, less what the wind takes of that. */
const THROUGH: NauticalMiles = 0.2;
const AT_ITS_ENDS: Seconds = 25;
/** A lap comes to the fix so near to the course at least. Chosen: the cut to a course is of 45 degrees at most, in common practice. */
const TOWARD: AngleSize = 50;
/** ... seen over so long at least. */
const LAST_OF_IT: Seconds = 10;
/** An entry's outbound leg leads so near to the reciprocal, or to a teardrop's track, 30 degrees to the holding side of it. FAA AIM 5-3-8 j.3, with room for wind. */
const LED_OUT: AngleSize = 40;
const TEARDROP: AngleSize = 30;
/** That leg is read between these shares of the time from the beginning to the laps: past the turn at the fix, and before the turn back. Chosen. */
const OUT: readonly [Share, Share] = [0.1, 0.3];
/** Of an entry that led out otherwise: something else was flown before the laps. Chosen. */
const NO_ENTRY: Share = 0.8;

const apart = ({ course }: HoldExercise, track: TrueDegrees): AngleSize =>
  Math.abs(turnFrom(course.azimuth, track));

/** One of several holds that a brief asks for at a fix, and the passes of it that the flight made. */
export interface AtFix {
  readonly exercise: HoldExercise;
  readonly others: readonly HoldExercise[];
  readonly passes: readonly FixPass[];
  readonly motion: Motion;
}

/** Whether a lap is one, and agrees better with this hold than with any other. */
function isOwn(
  { exercise, others, passes, motion }: AtFix,
  { turns }: FoundHold,
  { times }: FoundLap,
): boolean {
  const [begun, ending] = [times.start + AT_ITS_ENDS * 1000, times.end - AT_ITS_ENDS * 1000];
  if (passes.some(({ time, off }) => off < THROUGH && time > begun && time < ending)) return false;
  // the second half of the leg: what comes before may be the cut to the course
  const from = Math.min((times.inbound + times.end) / 2, times.end - LAST_OF_IT * 1000);
  const track = madeGood(motion, from, times.end);
  const off = (hold: HoldExercise) => apart(hold, track) + (hold.turns === turns ? 0 : OTHER_SIDE);
  return apart(exercise, track) < TOWARD && others.every((other) => off(exercise) <= off(other));
}

/** Whether a pass of the fix was come to as by a lap of one of the other holds; an arrival seldom is. */
export const endsOther = ({ others, motion }: AtFix, { time }: FixPass): boolean => {
  const track = madeGood(motion, time - LAST_OF_IT * 1000, time);
  return others.some((other) => apart(other, track) < TOWARD);
};

const ownLaps = (at: AtFix, hold: FoundHold): readonly FoundLap[] =>
  hold.laps.filter((lap) => isOwn(at, hold, lap));

export const allOwn = (at: AtFix, hold: FoundHold): boolean => ownLaps(at, hold).length === hold.laps.length;

/** How long it was flown as this one: its own laps, and the entry that led to them. */
function ownSeconds(at: AtFix, hold: FoundHold): Seconds {
  const laps = ownLaps(at, hold);
  const held = laps.reduce((sum, { times }) => sum + (times.end - times.start) / 1000, 0);
  const [first] = hold.laps;
  const entered = laps[0] === first && ledOut(at, hold);
  return held + (entered ? Math.max(0, first!.times.start - at.motion.time[hold.span.start]!) / 1000 : 0);
}

/**
 * How far a hold is this one: by the laps that are its own, by how long it was flown as this one of the longest that
 * any overlapping one was, by how near its course is, and by whether an entry led to it.
 */
export function ownShare(at: AtFix, hold: FoundHold, holds: readonly FoundHold[]): Share {
  const { start, end } = hold.span;
  const overlapping = holds.filter(({ span }) => span.start < end && span.end > start);
  const longest = Math.max(1, ...overlapping.map((other) => ownSeconds(at, other)));
  const laps = ownLaps(at, hold).length / hold.laps.length;
  const near = 1 - apart(at.exercise, hold.inbound) / OTHER_COURSE;
  return ((laps + ownSeconds(at, hold) / longest) / 2) * near * (ledOut(at, hold) ? 1 : NO_ENTRY);
}

/** Whether the outbound leg of an entry was one: along the reciprocal, or a teardrop's. */
function ledOut({ exercise, motion }: AtFix, { span, entry, laps, turns }: FoundHold): boolean {
  if (entry !== "parallel" && entry !== "teardrop") return true;
  const begin = motion.time[span.start]!;
  const took = laps[0]!.times.start - begin;
  const track = madeGood(motion, begin + OUT[0] * took, begin + OUT[1] * took);
  const toHoldingSide = (turns === "right" ? -1 : 1) * turnFrom(exercise.course.azimuth + 180, track);
  return Math.abs(toHoldingSide - (entry === "teardrop" ? TEARDROP : 0)) <= LED_OUT;
}
