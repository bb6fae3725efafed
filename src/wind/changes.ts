/**
 * Changes of speed that are seen on straights, allowed where they were made.
 *
 * A quick one is the airspeed's: no wind changes so within a block. A slow one may be the wind's too where height
 * changed meanwhile.
 */
import type { Feet, Knots } from "../quantity/units.ts";
import { AIRSPEED, type Facts, speedOf } from "./facts.ts";

/** Changes of ground speed that are more than wander, kt, within so many blocks. Tuned on simulated flights and tried on real ones, as all here. */
const CHANGES = [
  { blocks: 1, over: 4 },
  { blocks: 3, over: 6.5 },
  { blocks: 7, over: 7.5 },
] as const;
/**
 * Steps that are independent need the sum of their squares: a change made steadily in so many of them needs its square
 * over their number. More of it would be doubt about what was seen.
 */
const STEPS = 2;
/** A change from one block to the next is quick beyond this, kt. */
const QUICK = CHANGES[0].over;
/** Wind in a climb in which the speed changed slowly, kt per square root of 1,000 ft and axis. */
const WIND_WALK_SEEN = 4;

/** Adds what was seen to `levelStep` and, by the feet climbed at each fact, to `windStep`; returns how many changes there were. */
export function allowSeenChanges(facts: Facts, climbed: ArrayLike<Feet>): number {
  const { count, levelStep, windStep } = facts;
  const base = levelStep.slice(0, count);
  for (const { blocks, over } of CHANGES) {
    for (let i = 0; i + blocks < count; i++) allowChange(facts, i, i + blocks, over);
  }
  let seen = 0;
  for (let i = 1; i < count; i++) {
    const extra = levelStep[i]! - base[i]!;
    if (!(extra > 0)) continue;
    if (!(levelStep[i - 1]! > base[i - 1]!)) seen++;
    if (Math.abs(speedOf(facts, i) - speedOf(facts, i - 1)) > QUICK) continue;
    windStep[i] = windStep[i]! + Math.min(extra, (WIND_WALK_SEEN ** 2 * climbed[i]!) / 1000);
  }
  return seen;
}

/** A change from fact i to fact j of one straight, allowed in the steps that made it, by the squares of what each went its way. */
function allowChange(facts: Facts, i: number, j: number, over: Knots): void {
  const { leg, kind, turning, levelStep, climbStep } = facts;
  if (leg[i] !== leg[j] || turning[i]! > 0 || kind[i] !== AIRSPEED) return;
  const change = speedOf(facts, j) - speedOf(facts, i);
  if (Math.abs(change) <= over) return;
  const towards = (s: number) =>
    Math.max(0, Math.sign(change) * (speedOf(facts, s) - speedOf(facts, s - 1))) ** 2;
  let allowed = 0;
  let squares = 0;
  for (let s = i + 1; s <= j; s++) {
    allowed += levelStep[s]! + climbStep[s]!;
    squares += towards(s);
  }
  const missing = (change * change) / STEPS - allowed;
  if (!(missing > 0)) return;
  for (let s = i + 1; s <= j; s++) levelStep[s] = levelStep[s]! + (missing * towards(s)) / squares;
}
