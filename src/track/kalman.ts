/**
 * The constant-acceleration Kalman filter and its backward smoother, for any number of axes that share their gains.
 *
 * State of an axis: position p, velocity v, acceleration a; driven by white jerk of density q, discretised exactly
 * for any step dt. The backward pass is the modified Bryson-Frazier form of the Rauch-Tung-Striebel smoother, which
 * inverts nothing. Covariances do not depend on the data, so axes with the same noise share them.
 * Sources: Bar-Shalom, Li & Kirubarajan, Estimation with Applications to Tracking and Navigation, 2001,
 * section 6.2.3 (white jerk, exact discretisation); Bierman, Factorization Methods, 1977, chapter X (backward pass).
 */

/** What the smoother is told of the noise. */
export interface AxisNoise {
  /** Variance of a measured position, m2. */
  readonly measurement: number;
  /** Spectral density of the jerk, m2/s5. */
  readonly jerk: number;
}

/** The first fix is not the start itself: the filter meets it as a measurement, m2. */
const START_POSITION_VARIANCE = 100 ** 2;
/** A diffuse start: speeds up to a jet's, m2/s2, and accelerations of a hard turn, m2/s4. */
const START_VELOCITY_VARIANCE = 300 ** 2;
const START_ACCELERATION_VARIANCE = 5 ** 2;

/** Columns for the smoother of up to `capacity` rows: made once, used for every run of the flight. */
export class AxisSmoother {
  readonly axes: number;
  /** Smoothed state, row by row: p of all axes, v of all axes, a of all axes. */
  readonly state: Float64Array;
  /** Smoothed variances of position and velocity of an axis, row by row. */
  readonly positionVariance: Float64Array;
  readonly velocityVariance: Float64Array;
  /** Predicted covariance, row by row: pp, pv, pa, vv, va, aa. */
  private readonly covariance: Float64Array;
  private readonly innovation: Float64Array;
  private readonly weight: Float64Array;

  constructor(capacity: number, axes: number) {
    this.axes = axes;
    this.state = new Float64Array(capacity * 3 * axes);
    this.positionVariance = new Float64Array(capacity);
    this.velocityVariance = new Float64Array(capacity);
    this.covariance = new Float64Array(capacity * 6);
    this.innovation = new Float64Array(capacity * axes);
    this.weight = new Float64Array(capacity);
  }

  /**
   * Smooths one run. `seconds[k]` are the times and `measured[k * axes + i]` the positions in metres; a row whose
   * first axis is NaN is carried by the dynamics alone. Results stand in rows 0 to count - 1 of the columns.
   */
  smooth(seconds: Float64Array, measured: Float64Array, count: number, noise: AxisNoise): void {
    this.filter(seconds, measured, count, noise);
    this.backward(seconds, count);
  }

  /** The forward pass; returns the mean over rows and axes of log S + log(1 + y2/S / 4) * 5/2 (Student's t, 4 degrees). */
  filter(seconds: Float64Array, measured: Float64Array, count: number, noise: AxisNoise): number {
    const { axes, state, covariance, innovation, weight } = this;
    const { measurement: r, jerk: q } = noise;
    let first = 0;
    while (first < count - 1 && Number.isNaN(measured[first * axes]!)) first++;
    let pp = START_POSITION_VARIANCE;
    let pv = 0;
    let pa = 0;
    let vv = START_VELOCITY_VARIANCE;
    let va = 0;
    let aa = START_ACCELERATION_VARIANCE;
    let cost = 0;
    let terms = 0;
    for (let k = 0; k < count; k++) {
      const s0 = k * 3 * axes;
      if (k === 0) {
        for (let i = 0; i < axes; i++) {
          const start = measured[first * axes + i]!;
          state[s0 + i] = Number.isNaN(start) ? 0 : start;
          state[s0 + axes + i] = 0;
          state[s0 + 2 * axes + i] = 0;
        }
      } else {
        const d = seconds[k]! - seconds[k - 1]!;
        const d2 = d * d;
        const d3 = d2 * d;
        const from = s0 - 3 * axes;
        for (let i = 0; i < axes; i++) {
          const p = state[from + i]!;
          const v = state[from + axes + i]!;
          const a = state[from + 2 * axes + i]!;
          // `state` of the row before holds its prediction; its update is made here, with its gain
          const y = innovation[(k - 1) * axes + i]! * weight[k - 1]!;
          const c0 = (k - 1) * 6;
          const pu = p + covariance[c0]! * y;
          const vu = v + covariance[c0 + 1]! * y;
          const au = a + covariance[c0 + 2]! * y;
          state[s0 + i] = pu + vu * d + 0.5 * au * d2;
          state[s0 + axes + i] = vu + au * d;
          state[s0 + 2 * axes + i] = au;
        }
        pp += 2 * d * pv + d2 * (vv + pa) + d3 * va + 0.25 * d2 * d2 * aa + (q * d3 * d2) / 20;
        pv += d * (vv + pa) + 1.5 * d2 * va + 0.5 * d3 * aa + (q * d2 * d2) / 8;
        pa += d * va + 0.5 * d2 * aa + (q * d3) / 6;
        vv += 2 * d * va + d2 * aa + (q * d3) / 3;
        va += d * aa + (q * d2) / 2;
        aa += q * d;
      }
      const c = k * 6;
      covariance[c] = pp;
      covariance[c + 1] = pv;
      covariance[c + 2] = pa;
      covariance[c + 3] = vv;
      covariance[c + 4] = va;
      covariance[c + 5] = aa;
      const missing = Number.isNaN(measured[k * axes]!);
      const s = pp + r;
      const w = missing ? 0 : 1 / s;
      weight[k] = w;
      for (let i = 0; i < axes; i++) {
        const y = missing ? 0 : measured[k * axes + i]! - state[s0 + i]!;
        innovation[k * axes + i] = y;
        if (k > 3 && !missing) {
          cost += Math.log(s) + 5 * Math.log1p((y * y * w) / 4);
          terms++;
        }
      }
      // gain times its own transpose times S, without the gain
      vv -= pv * pv * w;
      va -= pv * pa * w;
      aa -= pa * pa * w;
      pv -= pp * pv * w;
      pa -= pp * pa * w;
      pp -= pp * pp * w;
    }
    return terms > 0 ? cost / terms : 0;
  }

  /** The backward pass: adjoint vector and matrix, from which the smoothed state and variances follow. */
  private backward(seconds: Float64Array, count: number): void {
    const { axes, state, covariance, innovation, weight, positionVariance, velocityVariance } = this;
    const adjoint = new Float64Array(3 * axes);
    // adjoint matrix, symmetric: pp, pv, pa, vv, va, aa
    let lpp = 0;
    let lpv = 0;
    let lpa = 0;
    let lvv = 0;
    let lva = 0;
    let laa = 0;
    for (let k = count - 1; k >= 0; k--) {
      const c = k * 6;
      const pp = covariance[c]!;
      const pv = covariance[c + 1]!;
      const pa = covariance[c + 2]!;
      const vv = covariance[c + 3]!;
      const va = covariance[c + 4]!;
      const aa = covariance[c + 5]!;
      const w = weight[k]!;
      const kp = pp * w;
      const kv = pv * w;
      const ka = pa * w;
      // through the measurement: L <- C' L C + h h'/S with C = I - K h'
      const mp = lpp * kp + lpv * kv + lpa * ka;
      const mv = lpv * kp + lvv * kv + lva * ka;
      const ma = lpa * kp + lva * kv + laa * ka;
      lpp += w - 2 * mp + kp * mp + kv * mv + ka * ma;
      lpv -= mv;
      lpa -= ma;
      for (let i = 0; i < axes; i++) {
        const fall =
          kp * adjoint[i]! +
          kv * adjoint[axes + i]! +
          ka * adjoint[2 * axes + i]! +
          innovation[k * axes + i]! * w;
        adjoint[i] = adjoint[i]! - fall;
      }
      const s0 = k * 3 * axes;
      for (let i = 0; i < axes; i++) {
        const gp = adjoint[i]!;
        const gv = adjoint[axes + i]!;
        const ga = adjoint[2 * axes + i]!;
        state[s0 + i] = state[s0 + i]! - (pp * gp + pv * gv + pa * ga);
        state[s0 + axes + i] = state[s0 + axes + i]! - (pv * gp + vv * gv + va * ga);
        state[s0 + 2 * axes + i] = state[s0 + 2 * axes + i]! - (pa * gp + va * gv + aa * ga);
      }
      positionVariance[k] = pp - quadratic(lpp, lpv, lpa, lvv, lva, laa, pp, pv, pa);
      velocityVariance[k] = vv - quadratic(lpp, lpv, lpa, lvv, lva, laa, pv, vv, va);
      if (k === 0) break;
      // through the step: L <- F' L F
      const d = seconds[k]! - seconds[k - 1]!;
      const h = 0.5 * d * d;
      const fpv = lpp * d + lpv;
      const fpa = lpp * h + lpv * d + lpa;
      const fvv = lpv * d + lvv;
      const fva = lpv * h + lvv * d + lva;
      const faa = lpa * h + lva * d + laa;
      laa = h * fpa + d * fva + faa;
      lva = d * fpa + fva;
      lvv = d * fpv + fvv;
      lpa = fpa;
      lpv = fpv;
      for (let i = 0; i < axes; i++) {
        const gp = adjoint[i]!;
        const gv = adjoint[axes + i]!;
        adjoint[axes + i] = gv + d * gp;
        adjoint[2 * axes + i] = adjoint[2 * axes + i]! + d * gv + h * gp;
      }
    }
  }
}

/** x' L x for a symmetric L. */
function quadratic(
  lpp: number,
  lpv: number,
  lpa: number,
  lvv: number,
  lva: number,
  laa: number,
  p: number,
  v: number,
  a: number,
): number {
  return lpp * p * p + lvv * v * v + laa * a * a + 2 * (lpv * p * v + lpa * p * a + lva * v * a);
}
