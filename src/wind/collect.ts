/**
 * From motion and legs to the few facts about wind that they contain: turns sampled, straights averaged in blocks.
 *
 * Straights are averaged because the wander of a hand-flown heading, taken point by point, looks as if it fixed the
 * crosswind.
 */
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { trueOverEquivalent } from "./atmosphere.ts";
import { cutAtBends } from "./bends.ts";
import { putBackExchange } from "./exchange.ts";
import { AIRSPEED, emptyFacts, type Facts, SHEAR_REACH, STANDARD_RATE, speedOf } from "./facts.ts";
import { straighten, Trend } from "./straighten.ts";

/** Turns are sampled this often, straights averaged over this, s. */
const TURN_STEP = 5;
const BLOCK = 20;
/** Scatter within a block is measured from so many rows on. */
const LEAST_ROWS = 4;
/** The airspeed is not settled for so long after leaving the ground and before touching it, s at 100 kt, in proportion at others. Common practice, no source. */
const AFTER_TAKE_OFF = 90;
const BEFORE_LANDING = 60;
/** Standard deviation of a fact then, as a share of the airspeed: it says next to nothing. An aircraft that speeds up steadily in its first turn would else look like one in a strong wind. */
const UNSETTLED = 1;

/** The facts of all legs, in order of time. `flown` leaves out the ground. */
export function collectFacts(motion: Motion, legs: readonly Leg[], flown: Uint8Array): Facts {
  const seconds = (motion.time[motion.length - 1]! - motion.time[0]!) / 1000;
  const cut = cutAtBends(motion, legs);
  const facts = emptyFacts(Math.min(motion.length, Math.ceil(seconds / TURN_STEP)) + 2 * cut.length + 2);
  const middle = middleAltitude(motion, flown);
  const middleGrowth = trueOverEquivalent(middle);
  cut.forEach((leg, index) => {
    if (leg.kind === "turn") sampleTurn(motion, leg, index, flown, facts);
    else averageStraight(motion, leg, index, flown, facts);
  });
  for (let i = 0; i < facts.count; i++) {
    const altitude = facts.altitude[i]!;
    const known = !Number.isNaN(altitude);
    facts.growth[i] = known ? trueOverEquivalent(altitude) / middleGrowth : 1;
    facts.thousands[i] = known ? SHEAR_REACH * Math.tanh((altitude - middle) / 1000 / SHEAR_REACH) : 0;
  }
  doubtUnsettled(motion, facts, flown);
  return facts;
}

function doubtUnsettled(motion: Motion, facts: Facts, flown: Uint8Array): void {
  for (let i = 0; i < facts.count; i++) {
    const speed = speedOf(facts, i);
    const scale = speed / 100;
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
    if (flown[back] === 0 || flown[ahead] === 0) facts.noise[i] = facts.noise[i]! + (UNSETTLED * speed) ** 2;
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
  const first = facts.count;
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
  putBackExchange(facts, first);
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

/** Standard deviation of the mean of a Gauss-Markov wander of 60 s over an interval, over that of the wander itself. */
function meanOfWander(seconds: number): number {
  const x = Math.max(0.01, seconds / 60);
  return Math.sqrt((2 / (x * x)) * (x - 1 + Math.exp(-x)));
}
