/**
 * One linear pass over the facts: forward Kalman filter, backward modified Bryson-Frazier smoother, no inverses.
 *
 * The transition is diagonal, so a step costs a few
 * hundred operations. Iterated with directions from the last path this is Gauss-Newton for the most probable flight.
 * Sources: Bierman, Factorization Methods for Discrete Sequential Estimation, 1977, chapter X; Bell, "The iterated
 * Kalman smoother as a Gauss-Newton method", SIAM J. Optimization 4 (1994) 626-636.
 */
import { AIRSPEED, EAST_PRIOR, type Facts, LEVEL_PRIOR } from "./facts.ts";
import {
  AIRSPEED_SHEARS,
  type Belief,
  carry,
  fade,
  fadeBoth,
  firstCovariance,
  type Kept,
  keptOf,
  LEVEL,
  N,
} from "./state.ts";

/** A copy at hand for the inner loops: looking up an imported value there doubles the time. */
const W: number = N;
const NN = W * W;

export class FactSmoother {
  readonly facts: Facts;
  /** By the time constants of the belief at first. */
  readonly kept: Kept;
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
  /** Predicted covariance times the coefficients of each fact. */
  private readonly gains: Float64Array;
  /** Adjoint before each fact's own measurement is undone: what this fact and all later ones say. */
  readonly adjoint: Float64Array;
  readonly adjointMatrix: Float64Array;
  private readonly h = new Float64Array(W);
  private readonly gain = new Float64Array(W);

  constructor(facts: Facts, belief: Belief) {
    const n = facts.count;
    this.facts = facts;
    this.kept = keptOf(belief, facts);
    const column = (width = 1) => new Float64Array(n * width);
    this.state = column(W);
    this.noseEast = column();
    this.noseNorth = column();
    this.doubtFactor = column().fill(1);
    this.varianceEast = column();
    this.varianceNorth = column();
    this.covariance = column();
    this.varianceAirspeed = column();
    this.innovation = column();
    this.innovationVariance = column();
    this.predicted = column(W);
    this.predictedCovariance = column(NN);
    this.gains = column(W);
    this.adjoint = column(W);
    this.adjointMatrix = column(NN);
  }

  /** Directions of the nose for a wind that is the same throughout. */
  startFrom(airEast: number, airNorth: number): void {
    const { count, east, north } = this.facts;
    for (let i = 0; i < count; i++) this.setNose(i, east[i]! - airEast, north[i]! - airNorth);
  }

  /** Directions of the nose from the last path. */
  relinearise(): void {
    const { count, east, north } = this.facts;
    for (let i = 0; i < count; i++) {
      this.setNose(i, east[i]! - this.windEast(i), north[i]! - this.windNorth(i));
    }
  }

  /** Smoothed wind of a fact. */
  windEast(i: number): number {
    const s = i * W;
    return this.state[s]! + this.state[s + 2]! + this.state[s + 7]! * this.facts.thousands[i]!;
  }

  windNorth(i: number): number {
    const s = i * W + 1;
    return this.state[s]! + this.state[s + 2]! + this.state[s + 7]! * this.facts.thousands[i]!;
  }

  private setNose(i: number, east: number, north: number): void {
    const size = Math.hypot(east, north) || 1;
    this.noseEast[i] = east / size;
    this.noseNorth[i] = north / size;
  }

  /** The coefficients of fact i into `h`; returns the measured value. */
  coefficients(i: number, h: Float64Array): number {
    const { kind, east, north, excess, growth, wanderShare, turning, thousands } = this.facts;
    h.fill(0);
    if (kind[i] === AIRSPEED) {
      const u = this.noseEast[i]!;
      const v = this.noseNorth[i]!;
      h[0] = u;
      h[1] = v;
      h[2] = u;
      h[3] = v;
      h[LEVEL] = growth[i]!;
      h[5] = wanderShare[i]!;
      h[6] = -turning[i]!;
      h[7] = u * thousands[i]!;
      h[8] = v * thousands[i]!;
      h[AIRSPEED_SHEARS] = thousands[i]!;
      return u * east[i]! + v * north[i]! + excess[i]!;
    }
    if (kind[i] === LEVEL_PRIOR) h[LEVEL] = growth[i]!;
    else if (kind[i] === EAST_PRIOR) {
      h[0] = 1;
      h[2] = 1;
      h[7] = thousands[i]!;
    } else {
      h[1] = 1;
      h[3] = 1;
      h[8] = thousands[i]!;
    }
    return east[i]!;
  }

  /** What a state foretells of fact i: coefficients into h, covariance times them into gain. */
  foretell(
    i: number,
    x: Float64Array,
    p: Float64Array,
    h: Float64Array,
    gain: Float64Array,
  ): { readonly surprise: number; readonly variance: number } {
    let surprise = this.coefficients(i, h);
    let variance = this.facts.noise[i]! * this.doubtFactor[i]!;
    for (let a = 0; a < W; a++) {
      let sum = 0;
      for (let b = 0; b < W; b++) sum += p[a * W + b]! * h[b]!;
      gain[a] = sum;
      surprise -= h[a]! * x[a]!;
      variance += h[a]! * sum;
    }
    return { surprise, variance };
  }

  /** Forward; returns minus twice the log likelihood of all facts, less a constant. */
  forward(belief: Belief): number {
    const { facts, kept, h, gain, gains, predicted, predictedCovariance, innovation, innovationVariance } =
      this;
    const x = Float64Array.from(belief.mean);
    const p = firstCovariance(belief);
    let cost = 0;
    for (let i = 0; i < facts.count; i++) {
      if (i > 0) carry(belief, kept, facts, i, x, p);
      predicted.set(x, i * W);
      predictedCovariance.set(p, i * NN);
      const { surprise, variance } = this.foretell(i, x, p, h, gain);
      gains.set(gain, i * W);
      innovation[i] = surprise;
      innovationVariance[i] = variance;
      cost += (surprise * surprise) / variance + Math.log(variance);
      learn(x, p, gain, surprise, variance);
    }
    return cost;
  }

  /** Forward and backward; returns the cost of the forward pass. */
  pass(belief: Belief): number {
    const cost = this.forward(belief);
    this.backward();
    return cost;
  }

  /** Forward and backward for the path alone: half the work, and the adjoints of the last whole pass stand as they were. */
  passForPath(belief: Belief): void {
    this.forward(belief);
    const { facts, h, kept } = this;
    const l = new Float64Array(W);
    for (let i = facts.count - 1; i >= 0; i--) {
      this.coefficients(i, h);
      this.backTo(i, l, h);
      this.stateFrom(i, l);
      if (i > 0) fade(kept, i, l);
    }
  }

  /** The adjoint takes in fact i: l <- C' l - h y/S with C = I - gain h'/S, in place. */
  private backTo(i: number, l: Float64Array, h: Float64Array): void {
    const { gains } = this;
    let fall = this.innovation[i]!;
    for (let a = 0; a < W; a++) fall += gains[i * W + a]! * l[a]!;
    fall /= this.innovationVariance[i]!;
    for (let a = 0; a < W; a++) l[a] = l[a]! - h[a]! * fall;
  }

  /** The smoothed state of fact i from its adjoint. */
  private stateFrom(i: number, l: Float64Array): void {
    const { predicted, predictedCovariance, state } = this;
    for (let a = 0; a < W; a++) {
      let sum = predicted[i * W + a]!;
      for (let b = 0; b < W; b++) sum -= predictedCovariance[i * NN + a * W + b]! * l[b]!;
      state[i * W + a] = sum;
    }
  }

  private backward(): void {
    const { facts, kept, h, gains } = this;
    const l = new Float64Array(W);
    const m = new Float64Array(NN);
    const mk = new Float64Array(W);
    for (let i = facts.count - 1; i >= 0; i--) {
      this.coefficients(i, h);
      const s = this.innovationVariance[i]!;
      // M <- C' M C + h h'/S
      let kmk = s;
      for (let a = 0; a < W; a++) {
        let sum = 0;
        for (let b = 0; b < W; b++) sum += m[a * W + b]! * gains[i * W + b]!;
        mk[a] = sum;
        kmk += gains[i * W + a]! * sum;
      }
      for (let a = 0; a < W; a++) mk[a] = (mk[a]! - (h[a]! * kmk) / s / 2) / s;
      for (let a = 0; a < W; a++) {
        for (let b = 0; b < W; b++) {
          m[a * W + b] = m[a * W + b]! - h[a]! * mk[b]! - mk[a]! * h[b]!;
        }
      }
      this.backTo(i, l, h);
      this.adjoint.set(l, i * W);
      this.adjointMatrix.set(m, i * NN);
      this.stateFrom(i, l);
      if (i === 0) break;
      fade(kept, i, l);
      fadeBoth(kept, i, m);
    }
  }
}

/** State and covariance take in what was foretold wrongly, in place. */
export function learn(
  x: Float64Array,
  p: Float64Array,
  gain: Float64Array,
  surprise: number,
  variance: number,
): void {
  for (let a = 0; a < W; a++) {
    const k = gain[a]! / variance;
    x[a] = x[a]! + k * surprise;
    for (let b = 0; b < W; b++) p[a * W + b] = p[a * W + b]! - k * gain[b]!;
  }
}
