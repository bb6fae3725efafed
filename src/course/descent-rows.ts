/** A descent row by row: how far to go along the way flown, what is needed from there, what is flown. */
import type { DescentExercise } from "../brief/brief.ts";
import { distanceFlown } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { type SilentBefore, silencesOf } from "../quantity/silence.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { Feet, NauticalMiles, Seconds } from "../quantity/units.ts";
import { knownAtEnds, SPOKEN_FT, strayedInHeight } from "../quantity/unseen.ts";
import { descentAfter, descentBefore, descentPoint } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { CoursePath } from "./path.ts";

/** Rows of the whole path, so that the past before the exercise is at hand. */
export interface DescentRows {
  readonly timed: boolean;
  /** Seconds from the first row; by distance at 100 kt where the log has no times. */
  readonly clock: Float64Array;
  readonly altitudeFt: Float64Array;
  /** Along the way flown to the point; negative past it. */
  readonly toGoNm: Float64Array;
  readonly groundSpeedKt: Float64Array;
  /** Down positive. */
  readonly downFpm: Float64Array;
  /** The first row at the point or past it, and the clock and the height just there; the row of the passage of the fix. */
  readonly point: number;
  readonly pointClock: Seconds;
  readonly pointFt: number;
  /** How far the height there may have been otherwise, being read between two points; 0 where that does not show. */
  readonly pointUnseenFt: Feet;
  readonly passage: number;
  readonly passedNm: NauticalMiles;
  /** Null where no descent was begun before the point. */
  readonly began: { readonly row: number; readonly from: number; readonly afterEarlier: boolean } | null;
  /** The length of the silence of the log that ends at a row; null where none does, and without times. */
  readonly silentBefore: SilentBefore;
}

/** Without times, seconds are those of this ground speed. Common practice for training aircraft, no source. */
const UNTIMED_KT = 100;
/** Without times a gradient is taken over this far on either side. Chosen: long against the steps of a logged height. */
const GRADIENT_OVER: NauticalMiles = 0.3;

/** The row of the path at which the height of a descent was wanted; `span`: rows in which it was flown. */
export const descentPointRow = (
  exercise: DescentExercise,
  path: Pick<CoursePath, "latitude" | "longitude">,
  span: Span,
): number =>
  descentPoint(
    exercise,
    path,
    span,
    distanceFlown(path.latitude, path.longitude).map(nauticalMilesFromMetres),
  ).row;

/** `earlier`: the point of a descent before this one, whose rows are not its own; null where there was none. */
export function measureDescentRows(
  exercise: DescentExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  earlier: number | null,
): DescentRows {
  const { latitude, longitude, altitude, time } = path;
  const n = latitude.length;
  const flownNm = distanceFlown(latitude, longitude).map(nauticalMilesFromMetres);
  const clock: Float64Array = time
    ? time.map((t) => (t - time[0]!) / 1000)
    : flownNm.map((miles): Seconds => (miles / UNTIMED_KT) * 3600);
  const { passage, passedNm, atNm: at, row: point } = descentPoint(exercise, path, span, flownNm);
  const unknown = () => new Float64Array(n).fill(Number.NaN);
  const found =
    earlier !== null && earlier < point
      ? descentAfter(clock, altitude, point, exercise.toAltitude, earlier)
      : descentBefore(clock, altitude, point, exercise.toAltitude);
  const before = flownNm[point - 1] ?? flownNm[point]!;
  const step = flownNm[point]! - before;
  const share = step > 0 && at > before ? Math.min(1, (at - before) / step) : 1;
  const between = (column: Float64Array) =>
    column[point]! - (1 - share) * (column[point]! - (column[point - 1] ?? column[point]!));
  const downFpm = motion ? motion.verticalSpeed.map((up) => -up) : unknown();
  const read =
    time && share < 1 ? strayedInHeight(clock[point]! - clock[point - 1]!, knownAtEnds(downFpm, point)) : 0;
  return {
    timed: time !== null,
    pointClock: between(clock),
    pointFt: between(altitude),
    pointUnseenFt: read >= SPOKEN_FT ? read : 0,
    clock,
    altitudeFt: altitude,
    toGoNm: flownNm.map((miles) => at - miles),
    groundSpeedKt: motion?.groundSpeed ?? unknown(),
    downFpm,
    point,
    passage,
    passedNm,
    began: found && { row: found.start, from: found.from, afterEarlier: found.start === earlier },
    silentBefore: time ? silencesOf(clock) : () => null,
  };
}

/** Feet lost in a mile about a row, by the heights some way before and after it; NaN where unknown. */
export function gradientAt({ altitudeFt, toGoNm }: DescentRows, row: number): number {
  let [first, last] = [row, row];
  while (first > 0 && toGoNm[first]! - toGoNm[row]! < GRADIENT_OVER) first--;
  while (last < toGoNm.length - 1 && toGoNm[row]! - toGoNm[last]! < GRADIENT_OVER) last++;
  const miles = toGoNm[first]! - toGoNm[last]!;
  return miles > 0 ? (altitudeFt[first]! - altitudeFt[last]!) / miles : Number.NaN;
}

/** The value of a column where another, rising one passes a value, straight between rows; null outside. */
export function whereClock(clock: Float64Array, column: Float64Array, at: Seconds): number | null {
  if (!(at >= clock[0]!) || at > clock.at(-1)!) return null;
  const i = Math.max(1, firstAtOrAfter(clock, at));
  const gap = clock[i]! - clock[i - 1]!;
  const share = gap > 0 ? (at - clock[i - 1]!) / gap : 0;
  return column[i - 1]! + share * (column[i]! - column[i - 1]!);
}
