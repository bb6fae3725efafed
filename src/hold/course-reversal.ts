/** Two course reversals one after the other look like a lap of a hold: half a turn and more, a leg, half a turn, a leg. Whether the second of them followed. */
import type { AngleSize, Seconds, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";
import { median } from "./likelihood.ts";

/**
 * A teardrop reversal leads out, bends away to one side, and turns back to the other by half a circle and the bend, so
 * that it comes back on the reciprocal of the way out. Bends from so much on; the way back within so much. Chosen: a
 * teardrop leads 20 to 40 degrees off, and a heading is held to some degrees. In simulation reversals bend by 10 and more
 * and come back within 13, and no single lap looks so (seeds 1 to 3000).
 */
const BEND: AngleSize = 9;
const BACK_WITHIN: AngleSize = 15;
/** ... and turns back by more than half a circle. Chosen. */
const MORE_THAN_HALF: AngleSize = 185;
/** ... after so long a way out. Chosen: a minute and some; in simulation 140 s at least. */
const WAY_OUT_MS = 90_000;
/** Headings are taken over so much of a leg, once rolled out. Chosen. */
const ROLLED_OUT_MS = 6000;
const LEG_MS = 20_000;
/** It turns where the heading changes by more than this in four seconds, degrees. Chosen. */
const TURNING: AngleSize = 4;
const LOOK: Seconds = 4;
/** A turn back is one once it has come so far, degrees. Chosen. */
const TURNED: AngleSize = 100;

/** Whether the leg after a lap's second turn was the way out of a teardrop reversal. */
export function leadsIntoReversal(ground: Ground, { times }: FoundLap): boolean {
  const { headingAt } = ground;
  const last = ground.times[1] - 2 * LOOK * 1000;
  const out = headingOver(ground, times.inbound + ROLLED_OUT_MS, times.inbound + ROLLED_OUT_MS + LEG_MS);
  const turning = (t: UtcMillis) => Math.abs(headingAt(t + LOOK * 1000) - headingAt(t)) > TURNING;
  let end = times.inbound;
  while (end < last && Math.abs(headingAt(end) - out) < TURNED) end += 1000;
  if (end >= last) return false;
  let start = end;
  while (start > times.inbound && turning(start - LOOK * 1000)) start -= 1000;
  while (end < last && turning(end)) end += 1000;
  const before = headingOver(ground, start - LEG_MS, start);
  const bend: TurnDegrees = before - out;
  const turn: TurnDegrees = headingAt(end) - before;
  const back: TurnDegrees = headingAt(end) - out;
  return (
    start - times.inbound > WAY_OUT_MS &&
    Math.abs(bend) > BEND &&
    bend * turn < 0 &&
    Math.abs(turn) > MORE_THAN_HALF &&
    Math.abs(Math.abs(back) - 180) < BACK_WITHIN
  );
}

function headingOver(ground: Ground, from: UtcMillis, to: UtcMillis): TurnDegrees {
  const headings: number[] = [];
  for (let t = from; t <= to; t += 1000) headings.push(ground.headingAt(t));
  return median(headings);
}
