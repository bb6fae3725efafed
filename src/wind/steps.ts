/**
 * How much airspeed and wind may have changed from one fact to the next.
 *
 * Real airspeed changes at any time: with each level-off, in every turn, with the throttle. On a straight such a
 * change is seen in the ground speed and allowed in full; in a turn it hides, and is looked for later.
 */
import { METRES_PER_SECOND_PER_KNOT, RADIANS_PER_DEGREE, STANDARD_GRAVITY } from "../quantity/factor.ts";
import { windGrowthAt } from "./belief.ts";
import { allowSeenChanges } from "./changes.ts";
import { type Facts, SHEAR_REACH, STANDARD_RATE } from "./facts.ts";
import { climbedOf } from "./heights.ts";

/** Tuned on simulated flights and tried on real ones; all in kt at an airspeed of 100 kt, in proportion at others. */
const LEVEL_WALK = 0.8; // per square root of 600 s, always
const BANK_WALK = 8; // per square root of a minute in a turn, times the square of the load factor less 1: induced drag, to be met with power
const FREE_LOAD = 0.075; // of it: a light aircraft's standard-rate turn, whose loss is a state of its own
const MOST_LOAD = 1.5; // of it, for one fact: rates of turn are noisy where the aircraft is slow
/** A change of vertical speed of 1,000 ft/min within VERTICAL_REACH s may come with this change of speed, kt. */
const PER_VERTICAL_CHANGE = 6;
const VERTICAL_REACH = 15;
const VERTICAL_DEADBAND = 200; // ft/min
/** Per square root of 1,000 ft climbed or lost, kt. */
const PER_CLIMB = 2;
/** Wind: random walk with height, kt per square root of 1,000 ft and axis. Far from the middle height, where no steady change covers it, it walks as what is believed of it beforehand grows. */
const WIND_WALK = 1.7;
/** Fills `levelStep`, `windStep` and `climbStep`; returns how often the airspeed was seen to be changed. */
export function setSteps(facts: Facts, airspeed: number): number {
  const { count, seconds, altitude, turning, levelStep, windStep, farStep, climbStep } = facts;
  const scale = airspeed / 100;
  const climbs = climbedOf(altitude, count);
  for (let i = 1; i < count; i++) {
    const dt = seconds[i]! - seconds[i - 1]!;
    const inTurn = turning[i]! > 0 || turning[i - 1]! > 0;
    let level = (LEVEL_WALK * scale) ** 2 * (dt / 600);
    if (inTurn) level += (turnWalk(facts, i, airspeed) * scale) ** 2 * (Math.min(dt, 10) / 60);
    const climbed = climbs[i]!;
    // indicated airspeed is not held exactly while height changes, and true airspeed sometimes is
    const begun = verticalChange(facts, i) * Math.min(1, dt / (2 * VERTICAL_REACH));
    climbStep[i] = begun + ((PER_CLIMB * scale) ** 2 * climbed) / 1000;
    levelStep[i] = level;
    const far = (facts.thousands[i]! / SHEAR_REACH) ** 8; // 0.11 at the reach, 0.75 at twice of it
    windStep[i] = (WIND_WALK ** 2 * climbed) / 1000;
    if (climbed > 0) farStep[i] = windGrowthAt(altitude[i]!) * far * climbed;
  }
  return allowSeenChanges(facts, climbs);
}

/** The walk of the airspeed in a turn by its bank: tan(bank) = V * rate / g, and n2 - 1 = tan2(bank). */
function turnWalk({ turning }: Facts, i: number, airspeed: number): number {
  const rate = Math.max(turning[i]!, turning[i - 1]!) * STANDARD_RATE * RADIANS_PER_DEGREE;
  const tangent = (airspeed * METRES_PER_SECOND_PER_KNOT * rate) / STANDARD_GRAVITY;
  return BANK_WALK * Math.max(0, Math.min(MOST_LOAD, tangent * tangent) - FREE_LOAD);
}

/** Variance that a change of vertical speed around the step before fact i suggests, kt2. */
function verticalChange(facts: Facts, i: number): number {
  const { seconds, verticalSpeed, count } = facts;
  const middle = (seconds[i]! + seconds[i - 1]!) / 2;
  let before = i - 1;
  while (before > 0 && middle - seconds[before]! < VERTICAL_REACH) before--;
  let after = i;
  while (after < count - 1 && seconds[after]! - middle < VERTICAL_REACH) after++;
  const change = Math.abs(verticalSpeed[after]! - verticalSpeed[before]!) - VERTICAL_DEADBAND;
  return change > 0 ? ((PER_VERTICAL_CHANGE * change) / 1000) ** 2 : 0;
}
