/**
 * Small turns that the legs leave in a straight: in a thin log, or a wind that bends the track little, a change of
 * course of 30 degrees is not told from a correction there. For the wind it is two courses, and the ground speed that
 * changes at it is the wind's, not the throttle's.
 */
import { directionOf, turnFrom } from "../quantity/angle.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Seconds } from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";

/** A bend is sought between the mean directions of so long before and after, s, and lasts so long to each side of its middle: a turn of 30 degrees at standard rate, with its rolls. Chosen. */
const REACH: Seconds = 40;
const HALF: Seconds = 8;
/** Degrees: six times what a heading that wanders by 2 degrees makes of such means. Chosen. */
const LEAST = 13;
/** Of the change, this share is made in the bend itself: of a slow arc it is less than a third. Chosen. */
const SHARP = 0.6;

/** The legs with each straight cut at its bends. */
export function cutAtBends(motion: Motion, legs: readonly Leg[]): Leg[] {
  return legs.flatMap((leg) => (leg.kind === "straight" ? cutStraight(motion, leg) : [leg]));
}

function cutStraight(motion: Motion, leg: Leg): Leg[] {
  const { start, end } = leg.span;
  const { time } = motion;
  if (time[end - 1]! - time[start]! < 2 * (REACH + HALF) * 1000) return [leg];
  const way = wayOver(motion, start, end);
  const parts: Leg[] = [];
  let from = start;
  for (let k = start; k < end; k++) {
    const turn = bendAt(motion, way, from, end, k);
    if (Math.abs(turn) < LEAST) continue;
    // the sharpest of those near
    let best = k;
    let most = Math.abs(turn);
    for (let j = k + 1; j < end && time[j]! - time[k]! < 2 * HALF * 1000; j++) {
      const other = Math.abs(bendAt(motion, way, from, end, j));
      if (other > most) [best, most] = [j, other];
    }
    const first = rowUpTo(motion, from, end, time[best]! - HALF * 1000);
    const after = firstAtOrAfter(motion.time, time[best]! + HALF * 1000, from, end - 1);
    parts.push({ kind: "straight", span: { start: from, end: first }, turn: 0 });
    parts.push({
      kind: "turn",
      span: { start: first, end: after },
      turn: bendAt(motion, way, from, end, best),
    });
    from = after;
    k = after;
  }
  if (from === start) return [leg];
  parts.push({ kind: "straight", span: { start: from, end }, turn: 0 });
  return parts;
}

/** Way flown up to each row of a straight, kt s. */
function wayOver({ time, velocityEast, velocityNorth }: Motion, start: number, end: number) {
  const east = new Float64Array(end - start);
  const north = new Float64Array(end - start);
  for (let k = start + 1; k < end; k++) {
    const half = (time[k]! - time[k - 1]!) / 2000;
    east[k - start] = east[k - start - 1]! + half * (velocityEast[k]! + velocityEast[k - 1]!);
    north[k - start] = north[k - start - 1]! + half * (velocityNorth[k]! + velocityNorth[k - 1]!);
  }
  return { start, east, north };
}

type Way = ReturnType<typeof wayOver>;

/** Degrees from the direction before a row to that after it; 0 where there is no bend, or too little on one side. */
function bendAt(motion: Motion, way: Way, from: number, end: number, k: number): number {
  const { time } = motion;
  const before = time[k]! - HALF * 1000;
  const after = time[k]! + HALF * 1000;
  if (before - REACH * 1000 < time[from]! || after + REACH * 1000 > time[end - 1]!) return 0;
  const first = rowUpTo(motion, from, end, before);
  const last = firstAtOrAfter(motion.time, after, from, end - 1);
  const course = directionOver(way, rowUpTo(motion, from, end, before - REACH * 1000), first);
  const next = directionOver(way, last, firstAtOrAfter(motion.time, after + REACH * 1000, from, end - 1));
  const turn = turnFrom(course, next);
  const inside = turnFrom(motion.trackAngle[first]!, motion.trackAngle[last]!);
  return inside * Math.sign(turn) >= SHARP * Math.abs(turn) ? turn : 0;
}

const directionOver = ({ start, east, north }: Way, from: number, to: number): number =>
  directionOf(east[to - start]! - east[from - start]!, north[to - start]! - north[from - start]!);

/** The last row at or before a time. */
function rowUpTo(motion: Motion, from: number, end: number, at: number): number {
  const row = firstAtOrAfter(motion.time, at, from, end - 1);
  return row > from && motion.time[row]! > at ? row - 1 : row;
}
