/**
 * One linear pass over the facts: forward Kalman filter, backward modified Bryson-Frazier smoother, no inverses.
 *
 * State: wind as it walks with height (east, north), wind as it wanders with time (east, north), level of the airspeed,
 * wander of the airspeed, airspeed lost in a standard-rate turn. The transition is diagonal, so a step costs a few
 * hundred operations. Iterated with directions from the last path this is Gauss-Newton for the most probable flight.
 * Sources: Bierman, Factorization Methods for Discrete Sequential Estimation, 1977, chapter X; Bell, "The iterated
 * Kalman smoother as a Gauss-Newton method", SIAM J. Optimization 4 (1994) 626-636.
 */
import { AIRSPEED, EAST_PRIOR, type Facts, LEVEL_PRIOR } from "./facts.ts";

export const N = 7;
const NN = N * N;

/** What is believed before the first fact, and how the two wanders fade. */
export interface Belief {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  /** Standard deviation and time constant of the wind's wander, kt and s. */
  readonly windWander: number;
  readonly windSeconds: number;
  /** Of the airspeed's. */
  readonly airspeedWander: number;
  readonly airspeedSeconds: number;
}

export class FactSmoother {
  readonly facts: Facts;
  /** Smoothed state of each fact. */
  readonly state: Float64Array;
  /** Unit vector of the air velocity at each fact, for the linearisation. */
  readonly noseEast: Float64Array;
  readonly noseNorth: Float64Array;
  /** Factor on each fact's variance, 1 or more, for robustness. */
  readonly doubtFactor: Float64Array;
  /** Smoothed variances of the wind and of the airspeed. */
  readonly varianceEast: Float64Array;
  readonly varianceNorth: Float64Array;
  readonly covariance: Float64Array;
  readonly varianceAirspeed: Float64Array;
  /** Innovation and its variance. */
  readonly innovation: Float64Array;
  readonly innovationVariance: Float64Array;
  readonly predicted: Float64Array;
  readonly predictedCovariance: Float64Array;
  /** Adjoint before each fact's own measurement is undone: what this fact and all later ones say. */
  readonly adjoint: Float64Array;
  readonly adjointMatrix: Float64Array;
  private readonly h = new Float64Array(N);
  private readonly gain = new Float64Array(N);

  constructor(facts: Facts) {
    const n = facts.count;
    this.facts = facts;
    const column = (width = 1) => new Float64Array(n * width);
    this.state = column(N);
    this.noseEast = column();
    this.noseNorth = column();
    this.doubtFactor = column().fill(1);
    this.varianceEast = column();
    this.varianceNorth = column();
    this.covariance = column();
    this.varianceAirspeed = column();
    this.innovation = column();
    this.innovationVariance = column();
    this.predicted = column(N);
    this.predictedCovariance = column(NN);
    this.adjoint = column(N);
    this.adjointMatrix = column(NN);
  }

  /** Directions of the nose for a wind that is the same throughout. */
  startFrom(airEast: number, airNorth: number): void {
    const { count, east, north } = this.facts;
    for (let i = 0; i < count; i++) this.setNose(i, east[i]! - airEast, north[i]! - airNorth);
  }

  /** Directions of the nose from the last path. */
  relinearise(): void {
    const { state } = this;
    const { count, east, north } = this.facts;
    for (let i = 0; i < count; i++) {
      const s = i * N;
      this.setNose(i, east[i]! - state[s]! - state[s + 2]!, north[i]! - state[s + 1]! - state[s + 3]!);
    }
  }

  private setNose(i: number, east: number, north: number): void {
    const size = Math.hypot(east, north) || 1;
    this.noseEast[i] = east / size;
    this.noseNorth[i] = north / size;
  }

  /** The coefficients of fact i into `h`; returns the measured value. */
  coefficients(i: number, h: Float64Array): number {
    const { kind, east, north, excess, growth, wanderShare, turning } = this.facts;
    h.fill(0);
    if (kind[i] === AIRSPEED) {
      const u = this.noseEast[i]!;
      const v = this.noseNorth[i]!;
      h[0] = u;
      h[1] = v;
      h[2] = u;
      h[3] = v;
      h[4] = growth[i]!;
      h[5] = wanderShare[i]!;
      h[6] = -turning[i]!;
      return u * east[i]! + v * north[i]! + excess[i]!;
    }
    if (kind[i] === LEVEL_PRIOR) h[4] = growth[i]!;
    else if (kind[i] === EAST_PRIOR) {
      h[0] = 1;
      h[2] = 1;
    } else {
      h[1] = 1;
      h[3] = 1;
    }
    return east[i]!;
  }

  /** Steps state and covariance in place from the fact before i to fact i. */
  step(belief: Belief, i: number, x: Float64Array, p: Float64Array): void {
    const { seconds, levelStep, windStep } = this.facts;
    const dt = seconds[i]! - seconds[i - 1]!;
    const keepWind = Math.exp(-dt / belief.windSeconds);
    const keepAir = Math.exp(-dt / belief.airspeedSeconds);
    for (let a = 2; a <= 5; a++) {
      if (a === 4) continue;
      const keep = a === 5 ? keepAir : keepWind;
      x[a] = x[a]! * keep;
      for (let b = 0; b < N; b++) {
        p[a * N + b] = p[a * N + b]! * keep;
        p[b * N + a] = p[b * N + a]! * keep;
      }
    }
    p[0] = p[0]! + windStep[i]!;
    p[N + 1] = p[N + 1]! + windStep[i]!;
    const w = belief.windWander ** 2 * (1 - keepWind * keepWind);
    p[2 * N + 2] = p[2 * N + 2]! + w;
    p[3 * N + 3] = p[3 * N + 3]! + w;
    p[4 * N + 4] = p[4 * N + 4]! + levelStep[i]!;
    p[5 * N + 5] = p[5 * N + 5]! + belief.airspeedWander ** 2 * (1 - keepAir * keepAir);
  }

  /** Forward and backward; returns the sum of squared normalised innovations. */
  pass(belief: Belief): number {
    const { facts, h, gain, predicted, predictedCovariance, innovation, innovationVariance } = this;
    const x = Float64Array.from(belief.mean);
    const p = new Float64Array(NN);
    for (let a = 0; a < N; a++) p[a * N + a] = belief.variance[a]!;
    let cost = 0;
    for (let i = 0; i < facts.count; i++) {
      if (i > 0) this.step(belief, i, x, p);
      predicted.set(x, i * N);
      predictedCovariance.set(p, i * NN);
      const z = this.coefficients(i, h);
      let y = z;
      let s = facts.noise[i]! * this.doubtFactor[i]!;
      for (let a = 0; a < N; a++) {
        let sum = 0;
        for (let b = 0; b < N; b++) sum += p[a * N + b]! * h[b]!;
        gain[a] = sum;
        y -= h[a]! * x[a]!;
        s += h[a]! * sum;
      }
      innovation[i] = y;
      innovationVariance[i] = s;
      cost += (y * y) / s;
      for (let a = 0; a < N; a++) {
        const k = gain[a]! / s;
        x[a] = x[a]! + k * y;
        for (let b = 0; b < N; b++) p[a * N + b] = p[a * N + b]! - k * gain[b]!;
      }
    }
    this.backward(belief);
    return cost;
  }

  private backward(belief: Belief): void {
    const { facts, h, gain, state, predicted, predictedCovariance } = this;
    const l = new Float64Array(N);
    const m = new Float64Array(NN);
    const mk = new Float64Array(N);
    for (let i = facts.count - 1; i >= 0; i--) {
      const c = i * NN;
      this.coefficients(i, h);
      const s = this.innovationVariance[i]!;
      for (let a = 0; a < N; a++) {
        let sum = 0;
        for (let b = 0; b < N; b++) sum += predictedCovariance[c + a * N + b]! * h[b]!;
        gain[a] = sum / s;
      }
      // M <- C' M C + h h'/S and l <- C' l - h y/S with C = I - gain h'
      let fall = this.innovation[i]! / s;
      let kmk = 1 / s;
      for (let a = 0; a < N; a++) {
        let sum = 0;
        for (let b = 0; b < N; b++) sum += m[a * N + b]! * gain[b]!;
        mk[a] = sum;
        fall += gain[a]! * l[a]!;
        kmk += gain[a]! * sum;
      }
      for (let a = 0; a < N; a++) {
        l[a] = l[a]! - h[a]! * fall;
        for (let b = 0; b < N; b++) {
          m[a * N + b] = m[a * N + b]! + h[a]! * h[b]! * kmk - h[a]! * mk[b]! - mk[a]! * h[b]!;
        }
      }
      this.adjoint.set(l, i * N);
      this.adjointMatrix.set(m, c);
      for (let a = 0; a < N; a++) {
        let sum = predicted[i * N + a]!;
        for (let b = 0; b < N; b++) sum -= predictedCovariance[c + a * N + b]! * l[b]!;
        state[i * N + a] = sum;
      }
      if (i === 0) break;
      const dt = facts.seconds[i]! - facts.seconds[i - 1]!;
      const keepWind = Math.exp(-dt / belief.windSeconds);
      const keepAir = Math.exp(-dt / belief.airspeedSeconds);
      for (let a = 2; a <= 5; a++) {
        if (a === 4) continue;
        const keep = a === 5 ? keepAir : keepWind;
        l[a] = l[a]! * keep;
        for (let b = 0; b < N; b++) {
          m[a * N + b] = m[a * N + b]! * keep;
          m[b * N + a] = m[b * N + a]! * keep;
        }
      }
    }
  }
}
