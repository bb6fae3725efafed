/** The rows of a hold in the frame of its inbound course: the one place where positions become along and across. */

import type { Course } from "../geodesy/course.ts";
import { measureColumns } from "../geodesy/index.ts";
import { cosDeg, direction, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE, nauticalMilesFromMetres } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { NauticalMiles, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { SpedRows } from "../quantity/unseen.ts";
import { Z95 } from "../quantity/weigh.ts";
import type { TurnSide } from "../standard/holding.ts";
import { SLOW_POSITION_SD } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";

/** Rows before and after the hold that are looked at too: how the fix was reached, how the hold was left. */
const ROUND_ABOUT: Seconds = 90;

/** Signs: along the inbound course from the fix, right of it positive. NaN where not known. */
export interface HoldFrame {
  readonly course: Course;
  /** The side that the turns were flown to: +1 right, -1 left. The racetrack lies on that side of the inbound course. */
  readonly side: 1 | -1;
  readonly motion: Motion;
  readonly wind: WindEstimate | null;
  /** Row of the motion of row 0. */
  readonly start: number;
  readonly length: number;
  readonly time: Float64Array;
  readonly along: Float64Array;
  readonly across: Float64Array;
  /** The estimated heading; NaN where the wind is not known in full. */
  readonly heading: Float64Array;
  readonly track: Float64Array;
  readonly altitude: Float64Array;
}

export function frameOf(
  course: Course,
  turns: TurnSide,
  span: Span,
  motion: Motion,
  wind: WindEstimate | null,
): HoldFrame {
  const { time } = motion;
  const start = firstAtOrAfter(time, time[span.start]! - ROUND_ABOUT * 1000);
  const end = firstAtOrAfter(time, time[span.end - 1]! + ROUND_ABOUT * 1000);
  const line = measureColumns(
    course,
    motion.latitude.subarray(start, end),
    motion.longitude.subarray(start, end),
  );
  const length = end - start;
  return {
    course,
    side: turns === "right" ? 1 : -1,
    motion,
    wind,
    start,
    length,
    time: time.subarray(start, end),
    along: line.along.map(nauticalMilesFromMetres),
    across: line.across.map(nauticalMilesFromMetres),
    heading: wind?.alongFlight.heading.subarray(start, end) ?? new Float64Array(length).fill(Number.NaN),
    track: motion.trackAngle.subarray(start, end),
    altitude: motion.altitude.subarray(start, end),
  };
}

/** A span of the motion in rows of the frame. */
export const inFrame = ({ start, length }: HoldFrame, span: Span): Span => ({
  start: Math.max(0, Math.min(length, span.start - start)),
  end: Math.max(0, Math.min(length, span.end - start)),
});

export const inMotion = ({ start }: HoldFrame, span: Span): Span => ({
  start: span.start + start,
  end: span.end + start,
});

/** The rows from one time to another, both included where they fall on rows. */
export function rowsBetween({ time }: HoldFrame, from: UtcMillis, to: UtcMillis): Span {
  const start = firstAtOrAfter(time, from);
  return { start, end: Math.max(start, firstAtOrAfter(time, to + 1e-6)) };
}

/** The value of a column at a time, straight between its rows. */
export function valueAt({ time }: HoldFrame, column: Float64Array, at: UtcMillis): number {
  const after = Math.max(1, Math.min(time.length - 1, firstAtOrAfter(time, at)));
  const [a, b] = [time[after - 1]!, time[after]!];
  const share = Math.max(0, Math.min(1, (at - a) / (b - a)));
  return column[after - 1]! * (1 - share) + column[after]! * share;
}

/** A direction at a time, by the shorter way between the rows. */
export function directionAt(frame: HoldFrame, column: Float64Array, at: UtcMillis): TrueDegrees {
  const { time } = frame;
  const after = Math.max(1, Math.min(time.length - 1, firstAtOrAfter(time, at)));
  const share = Math.max(0, Math.min(1, (at - time[after - 1]!) / (time[after]! - time[after - 1]!)));
  return direction(column[after - 1]! + share * turnFrom(column[after - 1]!, column[after]!));
}

/** Half-width of the 95 % interval of a distance off the course at a time. */
export function across95At(frame: HoldFrame, at: UtcMillis): NauticalMiles {
  const smoothed = valueAt(frame, frame.motion.positionSd.subarray(frame.start), at);
  return Z95 * Math.hypot(smoothed / METRES_PER_NAUTICAL_MILE, SLOW_POSITION_SD);
}

/** The rows of the frame as they are asked what the log did not see. */
export function spedRows({ time, along, across, motion, start, length }: HoldFrame): SpedRows {
  const gapBefore = new Uint8Array(length);
  const groundSpeedKt = motion.groundSpeed.subarray(start, start + length);
  return { timed: true, timeMs: time, alongNm: along, crossTrackNm: across, gapBefore, groundSpeedKt };
}

/** Mean of a column over time from one time to another, straight between rows; NaN where it is not known throughout. */
export function meanBetween(frame: HoldFrame, column: Float64Array, from: UtcMillis, to: UtcMillis): number {
  if (!(to > from)) return valueAt(frame, column, from);
  const { start, end } = rowsBetween(frame, from, to);
  let sum = 0;
  let [t, v] = [from, valueAt(frame, column, from)];
  for (let i = start; i < end; i++) {
    sum += ((frame.time[i]! - t) * (column[i]! + v)) / 2;
    [t, v] = [frame.time[i]!, column[i]!];
  }
  sum += ((to - t) * (valueAt(frame, column, to) + v)) / 2;
  return sum / (to - from);
}

/** Mean direction over the rows between two times; null where fewer than half of them are known. */
export function meanDirection(
  frame: HoldFrame,
  column: Float64Array,
  from: UtcMillis,
  to: UtcMillis,
): TrueDegrees | null {
  const { start, end } = rowsBetween(frame, from, to);
  let [east, north, known] = [0, 0, 0];
  for (let i = start; i < end; i++) {
    if (Number.isNaN(column[i]!)) continue;
    // each row stands for the time about it
    const w = frame.time[Math.min(frame.length - 1, i + 1)]! - frame.time[Math.max(0, i - 1)]!;
    east += w * sinDeg(column[i]!);
    north += w * cosDeg(column[i]!);
    known++;
  }
  return known > 0 && known >= (end - start) / 2 ? directionOf(east, north) : null;
}

/** Distance over the ground between two times, along the rows. */
export function distanceBetween(frame: HoldFrame, from: UtcMillis, to: UtcMillis): NauticalMiles {
  const { start, end } = rowsBetween(frame, from, to);
  let [x, y] = [valueAt(frame, frame.along, from), valueAt(frame, frame.across, from)];
  let sum = 0;
  const go = (along: number, across: number) => {
    sum += Math.hypot(along - x, across - y);
    [x, y] = [along, across];
  };
  for (let i = start; i < end; i++) go(frame.along[i]!, frame.across[i]!);
  go(valueAt(frame, frame.along, to), valueAt(frame, frame.across, to));
  return sum;
}

/** A direction less that of the inbound course, right positive. */
export const offInbound = ({ course }: HoldFrame, to: TrueDegrees): number => turnFrom(course.azimuth, to);
