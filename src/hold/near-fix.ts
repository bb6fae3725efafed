/** Passes over a place: the nearest that the flight came to it, and whether that was meant as the entry of a hold. */
import { directionOf, turnFrom } from "../quantity/angle.ts";
import type { Metres, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { cameByParallel } from "./cut-back.ts";
import type { Ground, Place } from "./ground.ts";
import { CHANCE_SECONDS, student, WELL } from "./likelihood.ts";
import { slowness } from "./slowness.ts";
import type { TurnEdges } from "./turn-edges.ts";

export interface Pass {
  readonly time: UtcMillis;
  readonly place: Place;
  /** How far from the fix. */
  readonly distance: Metres;
}

/** A log that begins less than this before the first turn shows no entry, s. Chosen. */
export const SEEN_SECONDS = 20;
/** Laps that drifted may put the fix so far beside an entry that passed it, seconds of flight. Tuned on simulation, seeds 1 to 1000. */
export const DRIFTED_SECONDS = 50;
/** How long before the first turn the fix was passed in a teardrop and in a parallel entry: least, s; most, s at rate one and legs. Chosen. */
const TEARDROP_BACK: readonly [Seconds, Seconds, number] = [25, 40, 1.4];
const PARALLEL_BACK: readonly [Seconds, Seconds, number] = [70, 150, 3.5];
/** The fix is passed so near to the side, when the course was joined and when it was not, seconds of flight. Tuned. */
const ASIDE = [2, 10] as const;
/** The log of what a pass is worth that never came. Tuned. */
export const MISSED = -2;
/** A parallel entry comes to the fix within this of the inbound direction, degrees. Chosen. */
const PARALLEL_TOWARD = 75;

/** The nearest that the flight came to a place in a time, at moments that count; null where the log has nothing then. */
export function nearest(
  ground: Ground,
  to: Place,
  from: UtcMillis,
  until: UtcMillis,
  counts: (time: UtcMillis) => boolean = () => true,
): Pass | null {
  let best: Pass | null = null;
  const [first, last] = ground.times;
  for (let t = Math.max(from, first); t <= Math.min(until, last); t += 1000) {
    const place = ground.place(t);
    const distance = Math.hypot(place.east - to.east, place.north - to.north);
    if ((!best || distance < best.distance) && counts(t)) best = { time: t, place, distance };
  }
  return best;
}

/** Over the fix on the way into a teardrop (the first turn leads inbound) or a parallel entry (it leads outbound). */
export function entryPass(
  ground: Ground,
  turn: TurnEdges,
  side: 1 | -1,
  first: 0 | 1,
  axis: TrueDegrees,
  fix: Place,
  legSeconds: Seconds,
): Pass | null {
  const [least, shortest, legs] = first === 0 ? PARALLEL_BACK : TEARDROP_BACK;
  const slow = slowness(ground.trueAirspeed);
  const most = shortest * slow + legs * legSeconds;
  const pass = nearest(ground, fix, turn.start - most * 1000, turn.start - least * 1000);
  if (!pass || pass.time < ground.times[0] + SEEN_SECONDS * 1000) return null;
  const turned = (t: UtcMillis) => side * (turn.before - ground.headingAt(t));
  if (first === 0) {
    const toward = Math.abs(turnFrom(axis, turn.before)) < PARALLEL_TOWARD;
    if (!toward || turned(pass.time) >= -120) return null;
    return cameByParallel(ground, side, fix, pass.time, turn.start, slow, trackBetween) ? pass : null;
  }
  for (let t = pass.time - 20_000; t < turn.start; t += 5000)
    if (turned(t) < -75 || turned(t) > 100) return null;
  return pass;
}

/** The log of how much more likely a pass so near, in seconds of flight, is if it was meant than by chance. */
export const passGain = (seconds: number): number =>
  Math.max(
    MISSED,
    Math.log(
      ((2 * WELL * student(seconds, ASIDE[0]) + 2 * (1 - WELL) * student(seconds, ASIDE[1])) *
        CHANCE_SECONDS) /
        2,
    ),
  );

export const trackAt = (ground: Ground, time: UtcMillis): number =>
  trackBetween(ground, { from: time - 2000, to: time + 2000 });

export const trackBetween = (
  ground: Ground,
  { from, to }: { readonly from: UtcMillis; readonly to: UtcMillis },
): number => {
  const a = ground.place(from);
  const b = ground.place(to);
  return directionOf(b.east - a.east, b.north - a.north);
};
