/**
 * One linear pass over the facts: forward Kalman filter, backward modified Bryson-Frazier smoother, no inverses.
 *
 * The transition is diagonal, so a step costs a few
 * hundred operations. Iterated with directions from the last path this is Gauss-Newton for the most probable flight.
 * Sources: Bierman, Factorization Methods for Discrete Sequential Estimation, 1977, chapter X; Bell, "The iterated
 * Kalman smoother as a Gauss-Newton method", SIAM J. Optimization 4 (1994) 626-636.
 */
import { FactModel, learn } from "./fact-model.ts";
import type { Facts } from "./facts.ts";
import { type Belief, carry, fade, fadeBoth, firstCovariance, type Kept, keptOf, N } from "./state.ts";

/** A copy at hand for the inner loops: looking up an imported value there doubles the time. */
const W: number = N;
const NN = W * W;

export class FactSmoother extends FactModel {
  /** By the time constants of the belief at first. */
  readonly kept: Kept;
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
    super(facts);
    const n = facts.count;
    this.kept = keptOf(belief, facts);
    const column = (width = 1) => new Float64Array(n * width);
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
