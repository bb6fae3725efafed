/** Which laps are those of one hold where a brief asks for several at one fix: by the side of their turns and their way to the fix, and by where they end. */
import type { HoldExercise } from "../brief/brief.ts";
import type { FoundHold, FoundLap } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, NauticalMiles, Seconds, Share, TrueDegrees } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { type FixPass, madeGood } from "./fix-passes.ts";

/** The other side speaks as much for another hold as so much of course. Chosen: the cut to an inbound course. */
export const OTHER_SIDE: AngleSize = 30;
/** In no lap is the fix flown over, so near, but at its two ends, within so many seconds. Chosen: the outbound leg of the slowest hold is as far aside as its turn is wide, less what the wind takes of that. */
const THROUGH: NauticalMiles = 0.2;
const AT_ITS_ENDS: Seconds = 25;
/** An entry's outbound leg leads so near to the reciprocal, or to a teardrop's track, 30 degrees to the holding side of it. FAA AIM 5-3-8 j.3, with room for wind. */
const LED_OUT: AngleSize = 40;
const TEARDROP: AngleSize = 30;
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
  const track = madeGood(motion, (times.inbound + times.end) / 2, times.end);
  const off = (hold: HoldExercise) => apart(hold, track) + (hold.turns === turns ? 0 : OTHER_SIDE);
  return others.every((other) => off(exercise) <= off(other));
}

const ownLaps = (at: AtFix, hold: FoundHold): number =>
  hold.laps.filter((lap) => isOwn(at, hold, lap)).length;

export const allOwn = (at: AtFix, hold: FoundHold): boolean => ownLaps(at, hold) === hold.laps.length;

/** How far a hold is this one: how many of its laps are, of its own and of those that any overlapping one has; and whether an entry led to them. */
export function ownShare(at: AtFix, hold: FoundHold, holds: readonly FoundHold[]): Share {
  const { start, end } = hold.span;
  const overlapping = holds.filter(({ span }) => span.start < end && span.end > start);
  const own = ownLaps(at, hold);
  const most = Math.max(1, ...overlapping.map((other) => ownLaps(at, other)));
  return ((own / hold.laps.length + own / most) / 2) * (ledOut(at, hold) ? 1 : NO_ENTRY);
}

/** Whether the outbound leg of an entry was one: along the reciprocal, or a teardrop's. */
function ledOut({ exercise, motion }: AtFix, { span, entry, laps, turns }: FoundHold): boolean {
  if (entry !== "parallel" && entry !== "teardrop") return true;
  const begin = motion.time[span.start]!;
  const took = laps[0]!.times.start - begin;
  const track = madeGood(motion, begin + 0.1 * took, begin + 0.3 * took);
  const toHoldingSide = (turns === "right" ? -1 : 1) * turnFrom(exercise.course.azimuth + 180, track);
  return Math.abs(toHoldingSide - (entry === "teardrop" ? TEARDROP : 0)) <= LED_OUT;
}
