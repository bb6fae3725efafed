/** The facts about wind and airspeed that a flight contains: each is one equation, ground velocity less wind has the length of the airspeed. */

/** What an equation is about. */
export const AIRSPEED = 0;
export const LEVEL_PRIOR = 1;
export const EAST_PRIOR = 2;
export const NORTH_PRIOR = 3;

/** A change of the wind with height is steady this far from the middle height, thousands of feet, and fades beyond. Common experience, no source. */
export const SHEAR_REACH = 3;

/** A standard-rate turn, deg/s. */
export const STANDARD_RATE = 3;

export interface Facts {
  count: number;
  /** The row of the motion in the middle of it, and the leg, counted in order: those given, cut at their bends. */
  readonly row: Int32Array;
  readonly leg: Int32Array;
  readonly kind: Uint8Array;
  /** s from the first row of the motion. */
  readonly seconds: Float64Array;
  /** Ground velocity, kt; for priors the value is in `east`. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  /**
   * Ground speed over that of the straight around, kt. It is put down to the airspeed, not turned with the nose: else
   * a nose far off the track would explain every change of speed, and be believed for it. In a turn: airspeed lost to height.
   */
  readonly excess: Float64Array;
  /** ft; NaN where unknown. */
  readonly altitude: Float64Array;
  /** Height over the flight's middle height, thousands of feet, as far as a steady change with height reaches; 0 where unknown. */
  readonly thousands: Float64Array;
  /** Mean vertical speed around, ft/min; 0 where unknown. */
  readonly verticalSpeed: Float64Array;
  /** True airspeed over the level, which is kept at the flight's middle height, were the indicated airspeed held. */
  readonly growth: Float64Array;
  /** Rate of turn over standard rate, never negative; 0 on straights. */
  readonly turning: Float64Array;
  /** Share of the airspeed's wander that is left in the average. */
  readonly wanderShare: Float64Array;
  /** Variance of the ground speed within a block, less that of the smoothing, kt2; NaN in turns and where rows are few. */
  readonly scatter: Float64Array;
  /** Variance of the measurement, kt2. */
  readonly noise: Float64Array;
  /** Variance by which the airspeed level and each component of the wind may have changed since the fact before, kt2. */
  readonly levelStep: Float64Array;
  readonly windStep: Float64Array;
  /** Each component of the wind besides, far from the flight's middle height. */
  readonly farStep: Float64Array;
  /** The airspeed level besides, with climbs and descents, and where they begin and end. */
  readonly climbStep: Float64Array;
}

export function emptyFacts(capacity: number): Facts {
  const column = () => new Float64Array(capacity);
  return {
    count: 0,
    row: new Int32Array(capacity),
    leg: new Int32Array(capacity),
    kind: new Uint8Array(capacity),
    seconds: column(),
    east: column(),
    north: column(),
    excess: column(),
    altitude: column(),
    thousands: column(),
    verticalSpeed: column(),
    growth: column(),
    turning: column(),
    wanderShare: column(),
    scatter: column().fill(NaN),
    noise: column(),
    levelStep: column(),
    windStep: column(),
    farStep: column(),
    climbStep: column(),
  };
}

/** Ground speed of a fact, kt. */
export const speedOf = (facts: Facts, i: number): number =>
  Math.hypot(facts.east[i]!, facts.north[i]!) + facts.excess[i]!;
