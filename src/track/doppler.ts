/**
 * Ground velocities that the receiver itself logged, and whether to believe them.
 *
 * A receiver measures velocity by the Doppler shift, better than positions tell it; but some logs hold speeds made
 * from their own positions, rounded courses, or speeds of some seconds ago. So the positions judge: logged velocities
 * are used where with them the filter foresees the next positions better than without.
 */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import {
  type AxisColumns,
  type AxisNoise,
  axisColumns,
  type FlightMeasured,
  longestOf,
  type Measured,
  measuredIn,
} from "./axes.ts";
import { smoothBackward } from "./backward.ts";
import { filterForward } from "./forward.ts";
import { choosePieces, surprise } from "./noise.ts";
import type { Track } from "./track.ts";

export interface LoggedVelocity {
  /** Cartesian, m/s, row by row; NaN where the log has none. */
  readonly velocity: Float64Array;
  /** Variance that the rounding of the log alone makes, m2/s2. */
  readonly rounding: number;
}

/**
 * Variances tried, m2/s2: 0.22 m/s to 1.6 m/s. Receivers smooth what they log, so errors last and a better velocity is
 * not believed; at long intervals nothing could tell it either. Chosen.
 */
const VARIANCES = [0.05, 0.12, 0.3, 0.8, 2.5];
/** Fewer logged velocities than this share of the rows are left alone. Chosen. */
const LEAST_SHARE = 0.5;
/** The mean surprise of a position must fall by so much: below that it is chance. Chosen: a good receiver gives ten times that. */
const LEAST_GAIN = 0.03;
/** Rows back and ahead over which a speed may have been made from positions. */
const REACHES = [
  [1, 0],
  [2, 0],
  [3, 0],
  [5, 0],
  [0, 1],
  [1, 1],
  [2, 2],
] as const;
/** Correlation with such differences from which velocities count as made from them. Chosen: see the tests. */
const MADE_FROM_POSITIONS = 0.75;
/** On a straight, rounding errs alike for as long as the smoother averages: so many rows count as one. Chosen. */
const ALIKE = 6;

/** Speed and course as logged, where the log has both; null where it has too few. */
export function loggedVelocity(track: Track, rows: Int32Array): LoggedVelocity | null {
  const { groundSpeed, trackAngle } = track;
  if (!groundSpeed || !trackAngle) return null;
  const velocity = new Float64Array(3 * rows.length).fill(Number.NaN);
  const speeds: number[] = [];
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k]!;
    const speed = groundSpeed[row]! * METRES_PER_SECOND_PER_KNOT;
    const angle = trackAngle[row]!;
    if (!(speed >= 0 && Number.isFinite(angle))) continue;
    speeds.push(speed);
    const [east, north] = [speed * sinDeg(angle), speed * cosDeg(angle)];
    const [latitude, longitude] = [track.latitude[row]!, track.longitude[row]!];
    velocity[3 * k] = -east * sinDeg(longitude) - north * sinDeg(latitude) * cosDeg(longitude);
    velocity[3 * k + 1] = east * cosDeg(longitude) - north * sinDeg(latitude) * sinDeg(longitude);
    velocity[3 * k + 2] = north * cosDeg(latitude);
  }
  if (speeds.length < LEAST_SHARE * rows.length) return null;
  const usual = speeds.sort((a, b) => a - b)[speeds.length >> 1]!;
  const along = resolution(groundSpeed) * METRES_PER_SECOND_PER_KNOT;
  const across = resolution(trackAngle) * RADIANS_PER_DEGREE * usual;
  return { velocity, rounding: (ALIKE * Math.max(along, across) ** 2) / 12 };
}

/** The least difference between values of a column: what it was rounded to. */
function resolution(column: Float64Array): number {
  const values = column.slice(0, 500).filter(Number.isFinite).sort();
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < values.length; i++) {
    const difference = values[i]! - values[i - 1]!;
    if (difference > 1e-9 && difference < least) least = difference;
  }
  return Number.isFinite(least) ? least : 0;
}

/** The noise with that of the logged velocities: infinite where they do not help. */
export function velocityNoise(
  measured: FlightMeasured,
  logged: LoggedVelocity | null,
  noise: AxisNoise,
  spans: readonly Span[],
): AxisNoise {
  if (!logged) return noise;
  const pieces = choosePieces(spans).map((span) => measuredIn(span, measured, 3));
  const columns = axisColumns(longestOf(choosePieces(spans)), 3, 2);
  if (pieces.some((piece) => madeFromPositions(columns, piece, noise))) return noise;
  const without = surprise(columns, pieces, noise).position;
  let best = noise;
  let least = Number.POSITIVE_INFINITY;
  for (const variance of VARIANCES) {
    const tried = { ...noise, velocity: Math.max(variance, logged.rounding) };
    const { position, velocity } = surprise(columns, pieces, tried);
    if (position > without - LEAST_GAIN || position + velocity >= least) continue;
    least = position + velocity;
    best = tried;
  }
  return best;
}

/**
 * Whether the velocities of a run are differences of its own positions: then what they have beyond the motion that the
 * positions tell is what such differences have. The difference may reach back, or to both sides, over some rows.
 */
function madeFromPositions(columns: AxisColumns, run: Measured, noise: AxisNoise): boolean {
  const { seconds, position, velocity, count } = run;
  if (velocity === null) return false;
  filterForward(columns, { ...run, velocity: null }, noise);
  smoothBackward(columns, run, noise);
  return REACHES.some(([back, ahead]) => {
    let [both, own, other] = [0, 0, 0];
    for (let k = back; k < count - ahead; k++) {
      if (Number.isNaN(velocity[3 * k]!)) continue;
      const d = seconds[k + ahead]! - seconds[k - back]!;
      for (let i = 0; i < 3; i++) {
        const smooth = columns.state[9 * k + 3 + i]!;
        const beyond = velocity[3 * k + i]! - smooth;
        const difference = (position[3 * (k + ahead) + i]! - position[3 * (k - back) + i]!) / d - smooth;
        both += beyond * difference;
        own += beyond * beyond;
        other += difference * difference;
      }
    }
    return both > MADE_FROM_POSITIONS * Math.sqrt(own * other);
  });
}
