/**
 * The forward pass: a Kalman filter of constant acceleration driven by white jerk, discretised exactly for any step.
 *
 * Source: Bar-Shalom, Li & Kirubarajan, Estimation with Applications to Tracking and Navigation, 2001, section 6.2.3.
 */
import type { AxisColumns, AxisNoise, Measured } from "./axes.ts";

/** The first fix is not the start itself: the filter meets it as a measurement, m2. */
const START_POSITION_VARIANCE = 100 ** 2;
/** A diffuse start: speeds up to a jet's, m2/s2, and accelerations of a hard turn, m2/s4. */
const START_VELOCITY_VARIANCE = 300 ** 2;
const START_ACCELERATION_VARIANCE = 5 ** 2;
/** Rows in which the filter settles: their surprise says nothing. */
const SETTLING = 3;

/** How surprised the filter was, means over rows: see `filterForward`. */
export interface Surprise {
  readonly position: number;
  /** 0 where no velocities were measured. */
  readonly velocity: number;
}

/**
 * Predicts and updates row by row; returns the mean surprise of a measured position and of a measured velocity, n log S + (4 + n)
 * log(1 + y'y/S / 4) in n dimensions (twice minus the log likelihood of Student's t of 4 degrees, so that single wild
 * points do not decide).
 */
export function filterForward(columns: AxisColumns, measured: Measured, noise: AxisNoise): Surprise {
  const { axes, free, state, covariance, positionInnovation, velocityInnovation } = columns;
  const { positionWeight, velocityWeight, jerkShape } = columns;
  const { seconds, position, extra, velocity, count } = measured;
  const updated = new Float64Array(3 * axes);
  let first = 0;
  while (first < count - 1 && Number.isNaN(position[first * axes]!)) first++;
  for (let i = 0; i < axes; i++) {
    const start = position[first * axes + i]!;
    updated[i] = Number.isNaN(start) ? 0 : start;
  }
  let pp = START_POSITION_VARIANCE;
  let pv = 0;
  let pa = 0;
  let vv = START_VELOCITY_VARIANCE;
  let va = 0;
  let aa = START_ACCELERATION_VARIANCE;
  let [positionCost, positions, velocityCost, velocities] = [0, 0, 0, 0];
  for (let k = 0; k < count; k++) {
    const s0 = k * 3 * axes;
    const d = k === 0 ? 0 : seconds[k]! - seconds[k - 1]!;
    const half = 0.5 * d * d;
    for (let i = 0; i < axes; i++) {
      const v = updated[axes + i]!;
      const a = updated[2 * axes + i]!;
      state[s0 + i] = updated[i]! + v * d + a * half;
      state[s0 + axes + i] = v + a * d;
      state[s0 + 2 * axes + i] = a;
    }
    const q = noise.jerk * jerkShape[k]!;
    const d2 = d * d;
    const d3 = d2 * d;
    pp += 2 * d * pv + d2 * (vv + pa) + d3 * va + 0.25 * d2 * d2 * aa + (q * d3 * d2) / 20 + noise.drift * d;
    pv += d * (vv + pa) + 1.5 * d2 * va + 0.5 * d3 * aa + (q * d2 * d2) / 8;
    pa += d * va + 0.5 * d2 * aa + (q * d3) / 6;
    vv += 2 * d * va + d2 * aa + (q * d3) / 3;
    va += d * aa + (q * d2) / 2;
    aa += q * d;
    const c = k * 6;
    covariance[c] = pp;
    covariance[c + 1] = pv;
    covariance[c + 2] = pa;
    covariance[c + 3] = vv;
    covariance[c + 4] = va;
    covariance[c + 5] = aa;
    for (let i = 0; i < 3 * axes; i++) updated[i] = state[s0 + i]!;

    positionWeight[k] = 0;
    if (!Number.isNaN(position[k * axes]!)) {
      const s = pp + noise.measurement + (extra === null ? 0 : extra[k]!);
      const w = 1 / s; // 0 where the point says nothing
      positionWeight[k] = w;
      let square = 0;
      for (let i = 0; i < axes; i++) {
        const y = position[k * axes + i]! - updated[i]!;
        positionInnovation[k * axes + i] = y;
        updated[i] = updated[i]! + pp * w * y;
        updated[axes + i] = updated[axes + i]! + pv * w * y;
        updated[2 * axes + i] = updated[2 * axes + i]! + pa * w * y;
        square += y * y;
      }
      if (k > SETTLING && w > 0) {
        positionCost += free * Math.log(s) + (4 + free) * Math.log1p((square * w) / 4);
        positions++;
      }
      // gain times its own transpose times S, without the gain
      vv -= pv * pv * w;
      va -= pv * pa * w;
      aa -= pa * pa * w;
      pv -= pp * pv * w;
      pa -= pp * pa * w;
      pp -= pp * pp * w;
    }

    velocityWeight[k] = 0;
    if (velocity !== null && !Number.isNaN(velocity[k * axes]!)) {
      const s = vv + noise.velocity;
      const w = 1 / s;
      velocityWeight[k] = w;
      let square = 0;
      for (let i = 0; i < axes; i++) {
        const y = velocity[k * axes + i]! - updated[axes + i]!;
        velocityInnovation[k * axes + i] = y;
        updated[i] = updated[i]! + pv * w * y;
        updated[axes + i] = updated[axes + i]! + vv * w * y;
        updated[2 * axes + i] = updated[2 * axes + i]! + va * w * y;
        square += y * y;
      }
      if (k > SETTLING && w > 0) {
        velocityCost += free * Math.log(s) + (4 + free) * Math.log1p((square * w) / 4);
        velocities++;
      }
      pp -= pv * pv * w;
      pa -= pv * va * w;
      aa -= va * va * w;
      pv -= vv * pv * w;
      va -= vv * va * w;
      vv -= vv * vv * w;
    }
  }
  return {
    position: positions > 0 ? positionCost / positions : 0,
    velocity: velocities > 0 ? velocityCost / velocities : 0,
  };
}
