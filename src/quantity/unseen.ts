/** What may have happened between two points of a log: bounded by leaving at a large correction and coming back. */
import { DEGREES_PER_RADIAN } from "./factor.ts";
import type { Span } from "./span.ts";
import type { AngleSize, Feet, FeetPerMinute, Knots, NauticalMiles, Seconds, TurnDegrees } from "./units.ts";
import { distanceFlown, type WeighedRows } from "./weigh.ts";

/** Off a course and back at this. Chosen: twice a usual correction, less than a cut that is made on purpose. */
const CUT: AngleSize = 20;
/** An end of a silence tells of a larger one up to this: square to a line nobody flies along it. Chosen. */
const LARGEST_CUT: AngleSize = 60;
/** Degrees a second: a standard-rate turn (FAA-H-8083-15A). It keeps what a second hides small. */
const TURN_RATE = 3;
/** Without times a step is flown at this. Common practice for training aircraft, no source. */
const UNTIMED: Knots = 100;
/** Off a height and back at this rate, the usual one of a climb or descent by instruments. Common practice, no source. */
const CLIMB: FeetPerMinute = 500;
/** ... come to within five seconds. Chosen. */
const CLIMB_WITHIN: Seconds = 5;

/** What shows in no figure is not spoken of: a hundredth of a mile or of full scale, and the ten feet that heights are told to. */
export const SPOKEN = 0.01;
export const SPOKEN_FT: Feet = 10;

/** The rate that is reached on the way off and back in a time, itself changing no faster than given. */
const reached = (most: number, change: number, seconds: Seconds): number =>
  Math.min(most, (change * seconds) / 4);

/** The farthest that such a rate leads. */
function strayed(most: number, change: number, seconds: Seconds): number {
  const rate = reached(most, change, seconds);
  return rate * (seconds / 2 - rate / change);
}

/**
 * Off a line and back within some seconds at a ground speed. Half a mile in two minutes at 100 kt, nothing that shows in a second.
 * `known`: an angle to the line that the track had at an end of them, where that is more than the usual one: whoever left so may have gone on so.
 */
export function strayedAcross(speed: Knots, seconds: Seconds, known: TurnDegrees = 0): NauticalMiles {
  const perSecond = speed / 3600;
  const cut = Math.min(LARGEST_CUT, Math.max(CUT, Math.abs(known) || 0));
  const most = perSecond * Math.tan(cut / DEGREES_PER_RADIAN);
  return strayed(most, (perSecond * TURN_RATE) / DEGREES_PER_RADIAN, seconds);
}

/** The larger of the values that a column has at the ends of the step to a row; 0 where neither is known. */
export const knownAtEnds = (column: Float64Array, row: number): number =>
  Math.max(Math.abs(column[row - 1]!) || 0, Math.abs(column[row]!) || 0);

/** Off a height and back within some seconds. `known`: a rate that the aircraft had at an end of them, where that is more than the usual one. */
export function strayedInHeight(seconds: Seconds, known: FeetPerMinute = 0): Feet {
  const most = Math.max(CLIMB, Math.abs(known) || 0) / 60;
  return strayed(most, most / CLIMB_WITHIN, seconds);
}

/** How far the rate itself may have been off the mean of some seconds. */
export const strayedRate = (seconds: Seconds): FeetPerMinute => reached(CLIMB, CLIMB / CLIMB_WITHIN, seconds);

/** A time of silence beside a span, at its first row or its last, while the exercise may have been flown on. */
export interface SilentEdge {
  readonly row: number;
  readonly seconds: Seconds;
}

export interface Unseen {
  /** How far up and how far down a column may have gone where nothing was recorded. */
  readonly high: number;
  readonly low: number;
  /** Length of the silence in which the farther of the two lies, and of that in which the low one does; null without times. */
  readonly seconds: Seconds | null;
  readonly lowS: Seconds | null;
}

export interface SpedRows extends WeighedRows {
  readonly groundSpeedKt: Float64Array;
}

/** Seconds from the row before, and the speed between, whichever tells more: of the points themselves or of the motion there. */
function stepTo(rows: SpedRows, row: number): { readonly seconds: Seconds; readonly speed: Knots } {
  const miles = distanceFlown(rows, { start: row - 1, end: row + 1 }, true);
  if (!rows.timed) return { seconds: (miles / UNTIMED) * 3600, speed: UNTIMED };
  const seconds = (rows.timeMs[row]! - rows.timeMs[row - 1]!) / 1000;
  const moved = ((rows.groundSpeedKt[row - 1] ?? 0) + (rows.groundSpeedKt[row] ?? 0)) / 2;
  return { seconds, speed: Math.max(seconds > 0 ? (miles / seconds) * 3600 : 0, moved || 0) };
}

/**
 * How far a column of a span may have gone between its rows: from half-way between two neighbours by what the time
 * between them allows. `strayedBy` gives that in the column's own unit. Null where no two rows are known.
 */
export function unseenOf(
  rows: SpedRows,
  { start, end }: Span,
  column: Float64Array,
  strayedBy: (speed: Knots, seconds: Seconds, row: number) => number,
  edges: readonly SilentEdge[] = [],
): Unseen | null {
  let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [above, below]: (Seconds | null)[] = [null, null];
  const take = (value: number, by: number, seconds: Seconds | null) => {
    if (Number.isNaN(value + by)) return;
    if (value + by > high) [high, above] = [value + by, seconds];
    if (value - by < low) [low, below] = [value - by, seconds];
  };
  for (let i = start + 1; i < end; i++) {
    const { speed, seconds } = stepTo(rows, i);
    take((column[i - 1]! + column[i]!) / 2, strayedBy(speed, seconds, i), rows.timed ? seconds : null);
  }
  // from an end of the span nothing need have come back: leaving takes all of the time, not half of it
  for (const { row, seconds } of edges)
    take(column[row]!, strayedBy(rows.groundSpeedKt[row] || UNTIMED, 2 * seconds, row), seconds);
  if (!Number.isFinite(high)) return null;
  return { high, low, seconds: high >= -low ? above : below, lowS: below };
}

/** As it stands among facts: the most that a size may have come to unseen; null where that is no more than was seen. */
export interface UnseenRecord {
  readonly most: number;
  readonly seconds: Seconds | null;
}

/** The most that half of a range may have come to, from what was seen of it; null where that adds less than `least`. */
export function unseenHalfRange(
  unseen: Unseen | null,
  lowest: number,
  highest: number,
  least: number,
): UnseenRecord | null {
  if (!unseen) return null;
  const most = (Math.max(highest, unseen.high) - Math.min(lowest, unseen.low)) / 2;
  return most - (highest - lowest) / 2 >= least ? { most, seconds: unseen.seconds } : null;
}

/** What adds less than `least` to what was seen is not spoken of. `atEnd`: the size that it came to at an end between two points. */
export function unseenRecord(
  unseen: Unseen | null,
  seen: number,
  least: number,
  atEnd = 0,
): UnseenRecord | null {
  if (!unseen) return null;
  const most = Math.max(Math.abs(unseen.high), Math.abs(unseen.low), atEnd);
  return most - Math.abs(seen) >= least ? { most, seconds: unseen.seconds } : null;
}
