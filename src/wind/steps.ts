/**
 * How much airspeed and wind may have changed from one fact to the next.
 *
 * Real airspeed changes at any time: with each level-off, in every turn, with the throttle. On a straight such a
 * change is seen in the ground speed and allowed in full; in a turn it hides, and is allowed on suspicion.
 */
import { AIRSPEED, type Facts } from "./facts.ts";

/** Tuned on simulated flights and tried on real ones; all in kt at an airspeed of 100 kt, in proportion at others. */
const LEVEL_WALK = 0.8; // per square root of 600 s, always
const TURN_WALK = 1.2; // per square root of a minute in a turn
/** A change of vertical speed of 1,000 ft/min within VERTICAL_REACH s may come with this change of speed, kt. */
const PER_VERTICAL_CHANGE = 6;
const VERTICAL_REACH = 15;
const VERTICAL_DEADBAND = 200; // ft/min
/** Wind: random walk with height, kt per square root of 1,000 ft and axis. */
const WIND_WALK = 2.5;
/** Changes of ground speed on a straight that are more than wander, kt, within so many blocks. */
const CHANGES = [
  { blocks: 1, over: 3 },
  { blocks: 3, over: 4.5 },
  { blocks: 7, over: 5.5 },
] as const;

/** Fills `levelStep` and `windStep`. */
export function setSteps(facts: Facts, airspeed: number): void {
  const { count, seconds, altitude, turning, levelStep, windStep } = facts;
  const scale = airspeed / 100;
  for (let i = 1; i < count; i++) {
    const dt = seconds[i]! - seconds[i - 1]!;
    const inTurn = turning[i]! > 0 || turning[i - 1]! > 0;
    let level = (LEVEL_WALK * scale) ** 2 * (dt / 600);
    if (inTurn) level += (TURN_WALK * scale) ** 2 * (Math.min(dt, 10) / 60);
    level += verticalChange(facts, i) * Math.min(1, dt / (2 * VERTICAL_REACH));
    levelStep[i] = level;
    const climbed = Math.abs(altitude[i]! - altitude[i - 1]!);
    windStep[i] = Number.isNaN(climbed) ? 0 : (WIND_WALK ** 2 * climbed) / 1000;
  }
  for (const { blocks, over } of CHANGES) allowSeenChanges(facts, blocks, over);
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

/** A change of speed seen on a straight is allowed at full size, spread over the steps that made it. */
function allowSeenChanges(facts: Facts, blocks: number, over: number): void {
  const { count, leg, kind, turning, east, north, levelStep } = facts;
  for (let i = 0; i + blocks < count; i++) {
    const j = i + blocks;
    if (leg[i] !== leg[j] || turning[i]! > 0 || kind[i] !== AIRSPEED) continue;
    const change = Math.hypot(east[j]!, north[j]!) - Math.hypot(east[i]!, north[i]!);
    if (Math.abs(change) <= over) continue;
    let allowed = 0;
    for (let s = i + 1; s <= j; s++) allowed += levelStep[s]!;
    const missing = change * change - allowed;
    if (missing > 0) for (let s = i + 1; s <= j; s++) levelStep[s] = levelStep[s]! + missing / blocks;
  }
}
