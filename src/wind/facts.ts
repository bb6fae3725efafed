/**
 * The few facts about wind and airspeed that a flight contains: turns sampled, straights averaged in blocks.
 *
 * Each fact is one equation, ground velocity less wind has the length of the airspeed. Straights are averaged because
 * the wander of a hand-flown heading, taken point by point, looks as if it fixed the crosswind.
 */
import { turnFrom } from "../quantity/angle.ts";
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
/** The direction of a block is that of the straight this far around it, s. */
const DIRECTION_REACH = 60;
/** A standard-rate turn, deg/s. */
const STANDARD_RATE = 3;

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
    altitude: column(),
    verticalSpeed: column(),
    growth: column(),
    turning: column(),
    wanderShare: column(),
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
  return facts;
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
    for (; k < end && motion.time[k]! < until; k++) {
      if (flown[k] === 0) continue;
      east += motion.velocityEast[k]!;
      north += motion.velocityNorth[k]!;
      vertical += motion.verticalSpeed[k]!;
      rows++;
    }
    if (rows === 0 || rows < (k - from) / 2) continue;
    const i = add(motion, facts, (from + k) >> 1, index);
    facts.east[i] = east / rows;
    facts.north[i] = north / rows;
    facts.verticalSpeed[i] = Number.isNaN(vertical) ? 0 : vertical / rows;
    facts.wanderShare[i] = meanOfWander(length / blocks);
    facts.noise[i] = motion.velocitySd[(from + k) >> 1]! ** 2 / 2;
  }
  straighten(facts, first);
}

/** Standard deviation of the mean of a Gauss-Markov wander of 60 s over an interval, over that of the wander itself. */
function meanOfWander(seconds: number): number {
  const x = Math.max(0.01, seconds / 60);
  return Math.sqrt((2 / (x * x)) * (x - 1 + Math.exp(-x)));
}

/** Blocks keep their speed along the straight around them: what wanders across it is not taken for a turn. */
function straighten(facts: Facts, first: number): void {
  const { count, east, north, seconds } = facts;
  const e = east.slice(first, count);
  const n = north.slice(first, count);
  for (let i = first, low = first, high = first; i < count; i++) {
    while (seconds[i]! - seconds[low]! > DIRECTION_REACH) low++;
    while (high < count && seconds[high]! - seconds[i]! <= DIRECTION_REACH) high++;
    let sumEast = 0;
    let sumNorth = 0;
    for (let j = low; j < high; j++) {
      sumEast += e[j - first]!;
      sumNorth += n[j - first]!;
    }
    const size = Math.hypot(sumEast, sumNorth);
    if (!(size > 0)) continue;
    const along = (e[i - first]! * sumEast + n[i - first]! * sumNorth) / size;
    east[i] = (along * sumEast) / size;
    north[i] = (along * sumNorth) / size;
  }
}

/** Turn between the ground velocities of two facts, degrees, right positive. */
export const turnBetween = (facts: Facts, i: number, j: number): number =>
  turnFrom(
    (Math.atan2(facts.east[i]!, facts.north[i]!) * 180) / Math.PI,
    (Math.atan2(facts.east[j]!, facts.north[j]!) * 180) / Math.PI,
  );
