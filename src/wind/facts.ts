/**
 * The few facts about wind and airspeed that a flight contains: turns sampled, straights averaged in blocks.
 *
 * Each fact is one equation, ground velocity less wind has the length of the airspeed. Straights are averaged because
 * the wander of a hand-flown heading, taken point by point, looks as if it fixed the crosswind.
 */
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { trueOverEquivalent } from "./atmosphere.ts";

/** What an equation is about. */
export const AIRSPEED = 0;
export const LEVEL_PRIOR = 1;
export const EAST_PRIOR = 2;
export const NORTH_PRIOR = 3;

/** Turns are sampled this often, straights averaged over this, s. */
const TURN_STEP = 5;
const BLOCK = 20;
/** Scatter within a block is measured from so many rows on. */
const LEAST_ROWS = 4;
/** The direction of a block is that of the straight this far around it, s. */
const DIRECTION_REACH = 240;
/** A standard-rate turn, deg/s. */
export const STANDARD_RATE = 3;
/** The airspeed is not settled for so long after leaving the ground and before touching it, s at 100 kt, in proportion at others. Common practice, no source. */
const AFTER_TAKE_OFF = 90;
const BEFORE_LANDING = 60;

export interface Facts {
  count: number;
  /** The row of the motion in the middle of it, and the leg (index into those given). */
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
   * a nose far off the track would explain every change of speed, and be believed for it.
   */
  readonly excess: Float64Array;
  /** ft; NaN where unknown. */
  readonly altitude: Float64Array;
  /** Mean vertical speed around, ft/min; 0 where unknown. */
  readonly verticalSpeed: Float64Array;
  /** True airspeed over the level, which is kept at the flight's middle height. */
  readonly growth: Float64Array;
  /** Rate of turn over standard rate, never negative; 0 on straights. */
  readonly turning: Float64Array;
  /** Share of the airspeed's wander that is left in the average. */
  readonly wanderShare: Float64Array;
  /** Variance of the ground speed within a block, less that of the smoothing, kt2; NaN in turns and where rows are few. */
  readonly scatter: Float64Array;
  /** 1 shortly after take-off and before landing. */
  readonly unsettled: Uint8Array;
  /** Variance of the measurement, kt2. */
  readonly noise: Float64Array;
  /** Variance by which the airspeed level and each component of the wind may have changed since the fact before, kt2. */
  readonly levelStep: Float64Array;
  readonly windStep: Float64Array;
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
    verticalSpeed: column(),
    growth: column(),
    turning: column(),
    wanderShare: column(),
    scatter: column().fill(NaN),
    unsettled: new Uint8Array(capacity),
    noise: column(),
    levelStep: column(),
    windStep: column(),
  };
}

/** The facts of all legs, in order of time. `flown` leaves out the ground. */
export function collectFacts(motion: Motion, legs: readonly Leg[], flown: Uint8Array): Facts {
  const seconds = (motion.time[motion.length - 1]! - motion.time[0]!) / 1000;
  const facts = emptyFacts(Math.min(motion.length, Math.ceil(seconds / TURN_STEP)) + 2 * legs.length + 2);
  const middleGrowth = trueOverEquivalent(middleAltitude(motion, flown));
  legs.forEach((leg, index) => {
    if (leg.kind === "turn") sampleTurn(motion, leg, index, flown, facts);
    else averageStraight(motion, leg, index, flown, facts);
  });
  for (let i = 0; i < facts.count; i++) {
    const altitude = facts.altitude[i]!;
    facts.growth[i] = Number.isNaN(altitude) ? 1 : trueOverEquivalent(altitude) / middleGrowth;
  }
  markUnsettled(motion, facts, flown);
  return facts;
}

function markUnsettled(motion: Motion, facts: Facts, flown: Uint8Array): void {
  for (let i = 0; i < facts.count; i++) {
    const scale = speedOf(facts, i) / 100;
    const row = facts.row[i]!;
    const at = motion.time[row]!;
    let back = row;
    while (back > 0 && flown[back] === 1 && at - motion.time[back]! < AFTER_TAKE_OFF * scale * 1000) back--;
    let ahead = row;
    while (
      ahead < motion.length - 1 &&
      flown[ahead] === 1 &&
      motion.time[ahead]! - at < BEFORE_LANDING * scale * 1000
    )
      ahead++;
    facts.unsettled[i] = flown[back] === 0 || flown[ahead] === 0 ? 1 : 0;
  }
}

export function middleAltitude(motion: Motion, flown: Uint8Array): number {
  const known = motion.altitude.filter((h, k) => flown[k] === 1 && !Number.isNaN(h)).sort();
  return known.length > 0 ? known[known.length >> 1]! : 0;
}

function add(motion: Motion, facts: Facts, row: number, leg: number): number {
  const i = facts.count++;
  facts.row[i] = row;
  facts.leg[i] = leg;
  facts.kind[i] = AIRSPEED;
  facts.seconds[i] = (motion.time[row]! - motion.time[0]!) / 1000;
  facts.altitude[i] = motion.altitude[row]!;
  const v = motion.verticalSpeed[row]!;
  facts.verticalSpeed[i] = Number.isNaN(v) ? 0 : v;
  return i;
}

function sampleTurn(motion: Motion, leg: Leg, index: number, flown: Uint8Array, facts: Facts): void {
  let due = -Infinity;
  for (let k = leg.span.start; k < leg.span.end; k++) {
    if (motion.time[k]! < due || flown[k] === 0) continue;
    due = motion.time[k]! + TURN_STEP * 1000;
    const i = add(motion, facts, k, index);
    facts.east[i] = motion.velocityEast[k]!;
    facts.north[i] = motion.velocityNorth[k]!;
    facts.turning[i] = Math.abs(motion.turnRate[k]!) / STANDARD_RATE;
    facts.wanderShare[i] = 1;
    facts.noise[i] = motion.velocitySd[k]! ** 2;
  }
}

function averageStraight(motion: Motion, leg: Leg, index: number, flown: Uint8Array, facts: Facts): void {
  const first = facts.count;
  const { start, end } = leg.span;
  const length = (motion.time[end - 1]! - motion.time[start]!) / 1000;
  const blocks = Math.max(1, Math.round(length / BLOCK));
  for (let b = 0, k = start; b < blocks; b++) {
    const until = b === blocks - 1 ? Infinity : motion.time[start]! + ((b + 1) * length * 1000) / blocks;
    const from = k;
    let east = 0;
    let north = 0;
    let rows = 0;
    let vertical = 0;
    const trend = new Trend();
    for (; k < end && motion.time[k]! < until; k++) {
      if (flown[k] === 0) continue;
      east += motion.velocityEast[k]!;
      north += motion.velocityNorth[k]!;
      vertical += motion.verticalSpeed[k]!;
      trend.add((motion.time[k]! - motion.time[from]!) / 1000, motion.groundSpeed[k]!);
      rows++;
    }
    if (rows === 0 || rows < (k - from) / 2) continue;
    const i = add(motion, facts, (from + k) >> 1, index);
    facts.east[i] = east / rows;
    facts.north[i] = north / rows;
    facts.verticalSpeed[i] = Number.isNaN(vertical) ? 0 : vertical / rows;
    if (rows >= LEAST_ROWS) {
      facts.scatter[i] = trend.scatter() - motion.velocitySd[facts.row[i]!]! ** 2;
    }
    facts.wanderShare[i] = meanOfWander(length / blocks);
    facts.noise[i] = motion.velocitySd[(from + k) >> 1]! ** 2 / 2;
  }
  straighten(facts, first);
}

/** A line through some values, and how they scatter about it. */
class Trend {
  private n = 0;
  private t = 0;
  private v = 0;
  private tt = 0;
  private tv = 0;
  private vv = 0;

  add(t: number, v: number): void {
    this.n++;
    this.t += t;
    this.v += v;
    this.tt += t * t;
    this.tv += t * v;
    this.vv += v * v;
  }

  /** Variance about the line. */
  scatter(): number {
    const { n, t, v } = this;
    const tt = this.tt - (t * t) / n;
    const tv = this.tv - (t * v) / n;
    const vv = this.vv - (v * v) / n;
    return Math.max(0, vv - (tt > 0 ? (tv * tv) / tt : 0)) / Math.max(1, n - 2);
  }
}

/** Standard deviation of the mean of a Gauss-Markov wander of 60 s over an interval, over that of the wander itself. */
function meanOfWander(seconds: number): number {
  const x = Math.max(0.01, seconds / 60);
  return Math.sqrt((2 / (x * x)) * (x - 1 + Math.exp(-x)));
}

/**
 * Blocks keep their speed, and take the direction of the straight around them: a line through the directions within
 * reach, so that an arc flown slowly keeps its curve, while what wanders across a straight is not taken for a turn.
 */
function straighten(facts: Facts, first: number): void {
  const { count, east, north, excess, seconds } = facts;
  const n = count - first;
  const angle = new Float64Array(n);
  const speed = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const a = Math.atan2(east[first + i]!, north[first + i]!);
    const turn = i === 0 ? 0 : a - angle[i - 1]!;
    angle[i] = i === 0 ? a : angle[i - 1]! + Math.atan2(Math.sin(turn), Math.cos(turn));
    speed[i] = Math.hypot(east[first + i]!, north[first + i]!);
  }
  for (let i = 0, low = 0, high = 0; i < n; i++) {
    const at = seconds[first + i]!;
    while (at - seconds[first + low]! > DIRECTION_REACH) low++;
    while (high < n && seconds[first + high]! - at <= DIRECTION_REACH) high++;
    let t = 0;
    let a = 0;
    let v = 0;
    let tt = 0;
    let ta = 0;
    for (let j = low; j < high; j++) {
      const dt = seconds[first + j]! - at;
      t += dt;
      a += angle[j]!;
      v += speed[j]!;
      tt += dt * dt;
      ta += dt * angle[j]!;
    }
    const m = high - low;
    const spread = tt - (t * t) / m;
    const slope = m > 2 && spread > 0 ? (ta - (t * a) / m) / spread : 0;
    const direction = (a - slope * t) / m;
    east[first + i] = (v / m) * Math.sin(direction);
    north[first + i] = (v / m) * Math.cos(direction);
    excess[first + i] = speed[i]! * Math.cos(angle[i]! - direction) - v / m;
  }
}

/** Ground speed of a fact, kt. */
export const speedOf = (facts: Facts, i: number): number =>
  Math.hypot(facts.east[i]!, facts.north[i]!) + facts.excess[i]!;
