/** When a turn began and ended, finer than the rows: where its ramp of heading meets the headings before and after. */
import type { Span } from "../quantity/span.ts";
import type { Share, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { Ground } from "./ground.ts";

export interface TurnEdges {
  readonly start: UtcMillis;
  readonly end: UtcMillis;
  /** Headings before and after, not wrapped. */
  readonly before: TurnDegrees;
  readonly after: TurnDegrees;
}

/** Headings on an arm are taken over so many seconds, this far from where the turn seems to begin. */
const LEVEL_SECONDS = 25;
const LEVEL_MARGIN = 3;
/** It still turns where it turns at this share of the usual rate over so much of the turn's time, or so many ms. Chosen. */
const SLOW: Share = 0.3;
const LOOK_SHARE: Share = 0.15;
const LEAST_LOOK_MS = 8000;
/** The ramp is read at these shares of the turn. */
const LOW = 0.15;
const HALF = 0.5;
/** Rolling into the bank takes its time: the ramp begins so late, s. Tuned on simulated flights. */
const ROLL_IN = 2.5;

export function turnEdges(motion: Motion, ground: Ground, before: Span, after: Span): TurnEdges {
  const { time } = motion;
  const at = (row: number) => time[Math.min(row, ground.span.end - 1)]!;
  let from = at(before.end);
  let to = Math.max(at(after.start), from + 1000);
  // slow turning at either end of a turn stands in the arms
  const rate = (ground.headingAt(to) - ground.headingAt(from)) / (to - from);
  const look = Math.max(LEAST_LOOK_MS, LOOK_SHARE * (to - from));
  const turns = (t: UtcMillis) => (ground.headingAt(t + look) - ground.headingAt(t)) / look / rate > SLOW;
  while (from - look > at(before.start) && turns(from - look)) from -= 1000;
  while (to + look < at(after.end) && turns(to)) to += 1000;
  const levelBefore = level(ground, at(before.start), from, -1);
  const levelAfter = level(ground, to, at(after.end), 1);
  const turn = levelAfter - levelBefore;
  const share = (t: UtcMillis) => (ground.headingAt(t) - levelBefore) / turn;
  const step = 1000;
  const first = Math.max(time[ground.span.start]!, from - 20_000);
  const last = Math.min(time[ground.span.end - 1]!, to + 20_000);
  // from half way out to both sides
  let half = first;
  for (let t = from; t <= last; t += step)
    if (share(t) >= HALF) {
      half = crossing(share, t - step, t, HALF);
      break;
    }
  let low = half;
  for (let t = half; t >= first; t -= step)
    if (share(t) <= LOW) {
      low = crossing(share, t, t + step, LOW);
      break;
    }
  let high = half;
  for (let t = half; t <= last; t += step)
    if (share(t) >= 1 - LOW) {
      high = crossing(share, t - step, t, 1 - LOW);
      break;
    }
  const more = LOW / (HALF - LOW);
  return {
    start: low - (half - low) * more - ROLL_IN * 1000,
    end: high + (high - half) * more,
    before: levelBefore,
    after: levelAfter,
  };
}

function crossing(share: (t: number) => number, a: UtcMillis, b: UtcMillis, value: number): UtcMillis {
  const low = share(a);
  const high = share(b);
  return high > low ? a + (b - a) * Math.max(0, Math.min(1, (value - low) / (high - low))) : b;
}

/** Median heading of an arm beside the turn: before it (side -1) or after it (side 1). */
function level(ground: Ground, from: UtcMillis, to: UtcMillis, side: -1 | 1): TurnDegrees {
  const margin = Math.min(LEVEL_MARGIN * 1000, (to - from) / 4);
  const low = side < 0 ? Math.max(from, to - LEVEL_SECONDS * 1000) : from + margin;
  const high = side < 0 ? to - margin : Math.min(to, from + LEVEL_SECONDS * 1000);
  const values: number[] = [];
  for (let t = low; t <= high; t += 1000) values.push(ground.headingAt(t));
  values.sort((a, b) => a - b);
  return values[values.length >> 1] ?? ground.headingAt(side < 0 ? to : from);
}
