/** What led onto the final: a cut, an arc, a hold, a circuit or a course reversal. */
import type { ApproachExercise } from "../brief/brief.ts";
import { measureColumns } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, Feet, NauticalMiles, Seconds } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { ApproachFacts } from "./facts.ts";
import { isArc } from "./joined-by-arc.ts";
import { isLap } from "./joined-by-lap.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** What led onto the final is looked for so far back. Chosen: a procedure turn with its outbound leg, or a lap of a hold. */
const LOOK_BACK: Seconds = 420;
/** Turned back on itself: a procedure turn, whose outbound track was within `OUTBOUND` of the reciprocal. Chosen. */
const BACK: AngleSize = 150;
const OUTBOUND: AngleSize = 60;
/** ... and no farther beside the final than this: farther out it was a downwind leg. Chosen. */
const OUTBOUND_BESIDE: NauticalMiles = 1.5;
/** A circuit: outbound within 30° abeam the threshold, so far aside, no higher above it than so. Common practice, no source: 1,000 ft, 1,500 for the fast; with the doubt of a log. */
const DOWNWIND: AngleSize = 150;
const DOWNWIND_BESIDE: readonly [NauticalMiles, NauticalMiles] = [0.4, 2];
const CIRCUIT: Feet = 1700;
/** ... but not from a turn so long before, begun over the field, no lower than so for so long before it. Chosen: a racetrack about a beacon there; whoever took off or went around was lower. */
const OUTBOUND_TURN: Seconds = 180;
const OVER_FIELD: NauticalMiles = 1.5;
const LOW: Feet = 600;
const CLIMBED_OUT: Seconds = 60;
/** A base leg: so near to square to the final, straight for so long. Chosen: a course reversal turns through square, whichever of them it is. */
const BASE: readonly [AngleSize, AngleSize] = [65, 115];
const BASE_FOR: Seconds = 15;
const STRAIGHT: DegreesPerSecond = 1;
/** Aligned with the final all the while. Chosen: wider than a wind correction being found. */
const ALIGNED: AngleSize = 20;

/** Null where the log has no times. `stations`: about which an arc may have been flown. */
export function joinedFrom(
  exercise: ApproachExercise,
  rows: ApproachRows,
  motion: Motion | null,
  { established, threshold }: Segments,
  stations: readonly Position[],
): ApproachFacts["joinedFrom"] {
  if (!motion) return null;
  // the final of a tight circuit is over before anybody can be established on it
  const joined = established ?? threshold?.row ?? null;
  if (joined === null) return "not-joined";
  const last = rows.pathStart + joined;
  let first = last;
  while (first > 0 && motion.time[last]! - motion.time[first - 1]! <= LOOK_BACK * 1000) first--;
  const error = (i: number) => turnFrom(exercise.course.azimuth, motion.trackAngle[i]!);
  let [turned, least, most] = [0, 0, 0];
  const { along, across } = measureColumns(
    exercise.course,
    motion.latitude.subarray(first, last + 1),
    motion.longitude.subarray(first, last + 1),
  );
  let outbound = false;
  let downwind = false;
  let aligned = true;
  for (let i = last; i > first; i--) {
    turned += turnFrom(motion.trackAngle[i]!, motion.trackAngle[i - 1]!);
    least = Math.min(least, turned);
    most = Math.max(most, turned);
    const beside = Math.abs(across[i - first]!) / METRES_PER_NAUTICAL_MILE;
    if (Math.abs(error(i)) > 180 - OUTBOUND && beside < OUTBOUND_BESIDE) outbound = true;
    if (Math.abs(error(i)) > ALIGNED) aligned = false;
    const abeam = along[i - first]! <= 0 && along[i - 1 - first]! > 0;
    const level = motion.altitude[i]! - exercise.runway.elevation < CIRCUIT;
    if (abeam && level && Math.abs(error(i)) > DOWNWIND && within(beside, DOWNWIND_BESIDE))
      downwind ||= !fromOverhead(exercise, motion, i);
  }
  if (established === null) return downwind ? "circuit" : "not-joined";
  if (aligned) return "straight-in";
  if (downwind) return "circuit";
  const before = { start: first, end: last + 1 };
  if (isLap(motion, before, exercise.course.azimuth, across)) return "hold";
  if (isArc(motion, before, stations)) return "arc";
  const reversed = outbound && most - least >= BACK;
  return reversed && !hasBase(motion, before, error) ? "procedure-turn" : "vectors";
}

/** Whether a straight about square to the final was flown, as between the outbound and the inbound of a box pattern. */
function hasBase(motion: Motion, { start, end }: Span, error: (row: number) => number): boolean {
  let seconds = 0;
  for (let i = start + 1; i < end; i++) {
    const straight = Math.abs(motion.turnRate[i]!) < STRAIGHT && within(Math.abs(error(i)), BASE);
    seconds = straight ? seconds + (motion.time[i]! - motion.time[i - 1]!) / 1000 : 0;
    if (seconds >= BASE_FOR) return true;
  }
  return false;
}

/**
 * Whether a way outbound that passed abeam the threshold at a row was begun by a turn from over the field, flown over
 * along the final and not climbed away from: of a racetrack about a beacon there, and not of a circuit.
 */
function fromOverhead({ course, runway }: ApproachExercise, motion: Motion, abeam: number): boolean {
  const since = motion.time[abeam]! - OUTBOUND_TURN * 1000;
  let start = abeam;
  while (start > 0 && motion.time[start]! > since) {
    if (Math.abs(turnFrom(course.azimuth, motion.trackAngle[start]!)) <= ALIGNED) break;
    start--;
  }
  if (start === 0 || motion.time[start]! <= since) return false;
  const { along, across } = measureColumns(
    course,
    motion.latitude.subarray(start, start + 1),
    motion.longitude.subarray(start, start + 1),
  );
  const near = Math.hypot(along[0]!, across[0]!) <= OVER_FIELD * METRES_PER_NAUTICAL_MILE;
  const onLine = Math.abs(across[0]!) <= DOWNWIND_BESIDE[0] * METRES_PER_NAUTICAL_MILE;
  if (!near || !onLine) return false;
  for (let i = start; i >= 0 && motion.time[start]! - motion.time[i]! <= CLIMBED_OUT * 1000; i--)
    if (!(motion.altitude[i]! - runway.elevation > LOW)) return false;
  return true;
}

const within = (value: number, [least, most]: readonly [number, number]): boolean =>
  value >= least && value <= most;
