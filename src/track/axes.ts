/**
 * The columns of the smoother, for any number of axes that share their gains: position p, velocity v, acceleration a.
 *
 * Covariances do not depend on the data, so axes with the same noise share them. Made once for the longest run of a
 * flight and used for every run.
 */
import type { Span } from "../quantity/span.ts";

/** What the smoother is told of the noise. */
export interface AxisNoise {
  /** Variance of a measured position about the receiver's slow error, m2. */
  readonly measurement: number;
  /** How fast the slow error wanders: variance gained a second, m2/s. It looks like motion, so velocities bear it. */
  readonly drift: number;
  /** Spectral density of the jerk, m2/s5. */
  readonly jerk: number;
  /** Variance of a measured velocity, m2/s2. */
  readonly velocity: number;
}

/** What was measured: row by row, all axes of a row together; where the first axis is NaN, nothing was. */
export interface FlightMeasured {
  readonly seconds: Float64Array;
  readonly position: Float64Array;
  /** Variance of each row's position besides the noise, m2; infinite where it says nothing. Null: none has. */
  readonly extra: Float64Array | null;
  readonly velocity: Float64Array | null;
}

/** The same of one run. */
export interface Measured extends FlightMeasured {
  readonly count: number;
}

export const measuredIn = ({ start, end }: Span, all: FlightMeasured, axes: number): Measured => ({
  seconds: all.seconds.subarray(start, end),
  position: all.position.subarray(start * axes, end * axes),
  extra: all.extra === null ? null : all.extra.subarray(start, end),
  velocity: all.velocity === null ? null : all.velocity.subarray(start * axes, end * axes),
  count: end - start,
});

export interface AxisColumns {
  readonly axes: number;
  /** Of the axes, so many along which the aircraft can move: two of the three earth-centred ones. */
  readonly free: number;
  /** Row by row: p of all axes, v of all axes, a of all axes. Predicted by the forward pass, smoothed by the backward. */
  readonly state: Float64Array;
  /** Smoothed variances of position and velocity of an axis, row by row. */
  readonly positionVariance: Float64Array;
  readonly velocityVariance: Float64Array;
  /** Predicted covariance, row by row: pp, pv, pa, vv, va, aa. */
  readonly covariance: Float64Array;
  readonly positionInnovation: Float64Array;
  readonly velocityInnovation: Float64Array;
  /** One over the variance of the innovation; 0 where nothing was measured. */
  readonly positionWeight: Float64Array;
  readonly velocityWeight: Float64Array;
  /** Jerk density of the step that leads to a row, over that of the run. */
  readonly jerkShape: Float64Array;
  /** The same as the smoothed motion shows it, over the one assumed: above 1 where the aircraft did more. */
  readonly jerkShown: Float64Array;
}

export function axisColumns(capacity: number, axes: number, free: number): AxisColumns {
  const column = (width: number) => new Float64Array(capacity * width);
  return {
    axes,
    free,
    state: column(3 * axes),
    positionVariance: column(1),
    velocityVariance: column(1),
    covariance: column(6),
    positionInnovation: column(axes),
    velocityInnovation: column(axes),
    positionWeight: column(1),
    velocityWeight: column(1),
    jerkShape: column(1).fill(1),
    jerkShown: column(1),
  };
}

/** Rows of the longest run: the capacity that columns need. */
export const longestOf = (spans: readonly Span[]): number =>
  spans.reduce((most, s) => Math.max(most, s.end - s.start), 0);
