/** What a state of wind and airspeed foretells of each fact, about the directions of the nose on the last path. */
import { AIRSPEED, EAST_PRIOR, type Facts, LEVEL_PRIOR } from "./facts.ts";
import { AIRSPEED_SHEARS, LEVEL, N } from "./state.ts";

/** A copy at hand for the inner loops: looking up an imported value there doubles the time. */
const W: number = N;

export class FactModel {
  readonly facts: Facts;
  /** Smoothed state of each fact. */
  readonly state: Float64Array;
  /** Unit vector of the air velocity at each fact, for the linearisation. */
  readonly noseEast: Float64Array;
  readonly noseNorth: Float64Array;
  /** Factor on each fact's variance, 1 or more, for robustness. */
  readonly doubtFactor: Float64Array;

  constructor(facts: Facts) {
    const n = facts.count;
    this.facts = facts;
    this.state = new Float64Array(n * W);
    this.noseEast = new Float64Array(n);
    this.noseNorth = new Float64Array(n);
    this.doubtFactor = new Float64Array(n).fill(1);
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
