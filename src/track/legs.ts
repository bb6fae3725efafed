/**
 * The flight cut into straights and turns by the most likely sequence of states (Viterbi), from the rate of turn.
 *
 * Thresholds on the rate alone are late by seconds; the most likely sequence is good to about one. Constants are
 * tuned on simulated flights of light aircraft and scale with speed, because a fast aircraft turns slowly.
 */
import { turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { Leg } from "./leg.ts";
import type { Motion } from "./motion.ts";
import { taxiSpeed } from "./taxi.ts";

/** Rate of turn on a straight, standard deviation, deg/s, at or below REFERENCE_SPEED (tuned). */
const STRAIGHT_SD = 0.75;
/** Rate of turn in a turn: most usual, and its spread below and above that, deg/s (tuned). */
const TURN_RATE = 2.7;
const TURN_SD_BELOW = 0.9;
const TURN_SD_ABOVE = 2;
/** Cost of a change of state, in units of minus log likelihood (tuned). */
const SWITCH_COST = 9;
/** Up to this speed, kt, turns are standard rate; beyond it bank is the limit and rates fall as 1 / speed. 25 deg of bank gives 3 deg/s at 170 kt. */
const REFERENCE_SPEED = 170;
/** Same-way turns closer than this, s, are one. */
const MERGE_SECONDS = 10;
/** A turn of less than this, deg, is a correction on a straight. */
const LEAST_TURN = 18;
/** A row stands for the time around it, but for no more than this, s. */
const MOST_WEIGHT = 5;

const STATES = 3; // straight, left, right

/**
 * Straights and turns of the motion, in order. The legs of each span of the motion partition it: every row is in
 * exactly one leg. `turn` is the change of ground track from the leg's first row to the first row of the next.
 */
export function findLegs(motion: Motion): Leg[] {
  const legs: Leg[] = [];
  const taxi = taxiSpeed(motion);
  for (const span of motion.spans) {
    const sides = mostLikely(motion, span, taxi);
    for (const leg of tidy(motion, span, sides, taxi)) legs.push(leg);
  }
  return legs;
}

interface Run extends Span {
  /** -1 left, 0 straight, +1 right. */
  readonly side: number;
}

/** The most likely side at each row of a span. */
function mostLikely(motion: Motion, span: Span, taxi: number): Int8Array {
  const n = span.end - span.start;
  const sides = new Int8Array(n);
  const from = new Uint8Array(n * STATES);
  const cost = new Float64Array(STATES);
  const next = new Float64Array(STATES);
  for (let i = 0; i < n; i++) {
    const k = span.start + i;
    const before = i > 0 ? motion.time[k]! - motion.time[k - 1]! : 1000;
    const after = i < n - 1 ? motion.time[k + 1]! - motion.time[k]! : before;
    const weight = Math.min(MOST_WEIGHT, (before + after) / 2000);
    const taxiing = motion.groundSpeed[k]! < taxi;
    const scale = Math.min(1, REFERENCE_SPEED / Math.max(1, motion.groundSpeed[k]!));
    const rate = taxiing ? 0 : motion.turnRate[k]! / scale;
    for (let s = 0; s < STATES; s++) {
      let best = s;
      let least = cost[s]!;
      for (let f = 0; f < STATES; f++) {
        if (f !== s && cost[f]! + SWITCH_COST < least) {
          least = cost[f]! + SWITCH_COST;
          best = f;
        }
      }
      next[s] = least + weight * surprise(s, rate);
      from[i * STATES + s] = best;
    }
    cost.set(next);
  }
  let state = cost.indexOf(Math.min(...cost));
  for (let i = n - 1; i >= 0; i--) {
    sides[i] = state === 1 ? -1 : state === 2 ? 1 : 0;
    state = from[i * STATES + state]!;
  }
  return sides;
}

/** Minus log likelihood of a rate of turn in a state. */
function surprise(state: number, rate: number): number {
  if (state === 0) return 0.5 * (rate / STRAIGHT_SD) ** 2 + Math.log(STRAIGHT_SD);
  const excess = (state === 2 ? rate : -rate) - TURN_RATE;
  const sd = excess < 0 ? TURN_SD_BELOW : TURN_SD_ABOVE;
  return 0.5 * (excess / sd) ** 2 + Math.log((TURN_SD_BELOW + TURN_SD_ABOVE) / 2);
}

/** Merges same-way turns that are close, turns small turns back into straights, joins neighbours. */
function tidy(motion: Motion, span: Span, sides: Int8Array, taxi: number): Leg[] {
  let runs: Run[] = [];
  for (let i = 0; i < sides.length; i++) {
    const last = runs[runs.length - 1];
    if (last && last.side === sides[i]) runs[runs.length - 1] = { ...last, end: span.start + i + 1 };
    else runs.push({ side: sides[i]!, start: span.start + i, end: span.start + i + 1 });
  }
  const seconds = (r: Span) => (motion.time[Math.min(r.end, span.end - 1)]! - motion.time[r.start]!) / 1000;
  const bridged = runs.map((r, i) => {
    const a = runs[i - 1];
    const b = runs[i + 1];
    const bridge = r.side === 0 && a && b && a.side === b.side && seconds(r) < MERGE_SECONDS;
    return bridge ? { ...r, side: a.side } : r;
  });
  runs = join(bridged);
  runs = join(
    runs.map((r) =>
      r.side !== 0 && Math.abs(trackChange(motion, r, span, taxi)) < LEAST_TURN ? { ...r, side: 0 } : r,
    ),
  );
  return runs.map((r) => ({
    kind: r.side === 0 ? ("straight" as const) : ("turn" as const),
    span: { start: r.start, end: r.end },
    turn: trackChange(motion, r, span, taxi),
  }));
}

function join(runs: readonly Run[]): Run[] {
  const joined: Run[] = [];
  for (const run of runs) {
    const last = joined[joined.length - 1];
    if (last && last.side === run.side) joined[joined.length - 1] = { ...last, end: run.end };
    else joined.push(run);
  }
  return joined;
}

/** Change of ground track summed row by row, so that it may exceed 360; nothing is summed while taxiing. */
function trackChange(motion: Motion, run: Span, span: Span, taxi: number): number {
  let sum = 0;
  for (let k = run.start; k < Math.min(run.end, span.end - 1); k++) {
    if (motion.groundSpeed[k]! < taxi) continue;
    sum += turnFrom(motion.trackAngle[k]!, motion.trackAngle[k + 1]!);
  }
  return sum;
}
