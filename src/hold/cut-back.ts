/** Whether a long leg out from the fix and back to it was a parallel entry, which turns back by more than half a circle, or only how the aircraft came. */
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Metres, Seconds, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Ground, Place } from "./ground.ts";

/** Outbound legs of parallel entries are no longer, s at rate one, unless the turn back shows one. Chosen: twice and a half the usual minute. */
const USUAL_OUT: Seconds = 150;
/** Back to the course from the holding side, a parallel entry turns by half a circle and more than this. Chosen: half of a cut of 30 degrees. In simulation entries cut by 22 and more, arrivals by 12 at most (seeds 1 to 3000). */
const BEYOND_HALF: AngleSize = 15;
/** Straight flight turns by less than this in four seconds, degrees. Chosen. */
const STRAIGHT = 4;
const LOOK_MS = 4000;
/** Tracks are taken over so long beside the turn. Chosen. */
const BESIDE_MS = 16_000;

/** From over the fix until the first turn of the hold, in which it turned back once; `trackBetween` of the same ground. */
export function cameByParallel(
  ground: Ground,
  side: 1 | -1,
  fix: Place,
  over: UtcMillis,
  until: UtcMillis,
  slow: number,
  trackBetween: (ground: Ground, span: { readonly from: UtcMillis; readonly to: UtcMillis }) => number,
): boolean {
  const far = farthest(ground, fix, over, until);
  const turns = (t: UtcMillis) => Math.abs(ground.headingAt(t + LOOK_MS) - ground.headingAt(t)) > STRAIGHT;
  let [start, end] = [far, far];
  while (start > over && turns(start - LOOK_MS)) start -= 1000;
  if ((start - over) / 1000 <= USUAL_OUT * slow) return true;
  while (end < until && turns(end)) end += 1000;
  const out = trackBetween(ground, { from: start - BESIDE_MS, to: start });
  const back = trackBetween(ground, { from: end, to: Math.min(until, end + BESIDE_MS) });
  const beyond: TurnDegrees = -side * turnFrom(out + 180, back);
  return beyond > BEYOND_HALF;
}

function farthest(ground: Ground, fix: Place, from: UtcMillis, until: UtcMillis): UtcMillis {
  let best: { readonly at: UtcMillis; readonly distance: Metres } = { at: from, distance: 0 };
  for (let t = from; t < until; t += 1000) {
    const { east, north } = ground.place(t);
    const distance = Math.hypot(east - fix.east, north - fix.north);
    if (distance > best.distance) best = { at: t, distance };
  }
  return best.at;
}
