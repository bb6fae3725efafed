/** The pass over the fix before a parallel entry: a leg out along the reciprocal of the course, and half a circle the other way before the hold's first turn. */
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { Ground, Place } from "./ground.ts";
import { DRIFTED_SECONDS, type Pass, SEEN_SECONDS, trackAt } from "./near-fix.ts";
import type { Reading } from "./reading.ts";
import { slowness } from "./slowness.ts";

/** A parallel entry takes no longer than this, s at rate one; it turns back by more than this, degrees. Chosen. */
const LONGEST_PARALLEL = 360;
const OTHER_WAY = 150;
/** Its outbound leg leads along the reciprocal within this, degrees, once so many seconds of flight from abeam, and begins abeam the fix within so many. Chosen. */
export const ALONG = 40;
const BEGINS = 15;
const ABEAM_SECONDS = 25;
/** It was back so soon that nothing else was flown between, s at rate one: then drift may have put the fix aside. Tuned on simulation, seeds 1 to 1000. */
const BACK_SOON = 180;
/** Straight flight turns by less than this in four seconds, degrees. Chosen. */
const STRAIGHT = 4;

/** The track along the reciprocal, but for `ALONG`. */
const leadsOut = (ground: Ground, course: TrueDegrees, t: UtcMillis): boolean =>
  Math.abs(turnFrom(course + 180, trackAt(ground, t))) < ALONG;

/** When a parallel entry may be looked for at the earliest. */
const earliest = (ground: Ground, { turns }: Reading): UtcMillis =>
  Math.max(
    ground.times[0] + SEEN_SECONDS * 1000,
    turns[0]!.start - LONGEST_PARALLEL * slowness(ground.trueAirspeed) * 1000,
  );

/** The last time before the first turn from which on half a circle was turned the other way. */
export function turnedBack(ground: Ground, side: 1 | -1, reading: Reading, course: TrueDegrees): UtcMillis {
  const { start, before } = reading.turns[0]!;
  const until = earliest(ground, reading);
  const turned = (t: UtcMillis) => side * (before - ground.headingAt(t));
  let t = start - 30_000;
  while (
    t > until &&
    (turned(t) > -OTHER_WAY || (turned(t) > -2 * OTHER_WAY && !leadsOut(ground, course, t)))
  )
    t -= 1000;
  return t;
}

/** The last moment of straight flight until then. */
export function straightBefore(ground: Ground, until: UtcMillis): UtcMillis {
  const first = ground.times[0] + SEEN_SECONDS * 1000;
  let t = until;
  while (t > first && Math.abs(ground.headingAt(t) - ground.headingAt(t - 4000)) > STRAIGHT) t -= 1000;
  return t - 2000;
}

/**
 * Over or abeam the fix before a parallel entry that drifted: a turn of half a circle the other way before the first
 * turn, and before that a leg along the reciprocal of the course that began abeam the fix. Null where there was none.
 */
export function parallelPass(
  ground: Ground,
  reading: Reading,
  fix: Place,
  course: TrueDegrees,
  back: UtcMillis,
): Pass | null {
  const { metres } = ground;
  const until = earliest(ground, reading);
  const [e, n] = [sinDeg(course), cosDeg(course)];
  const soon = reading.turns[0]!.start - back < BACK_SOON * slowness(ground.trueAirspeed) * 1000;
  const within = soon ? DRIFTED_SECONDS : ABEAM_SECONDS;
  for (let t = back; t > until; t -= 1000) {
    const place = ground.place(t);
    const along = ((place.east - fix.east) * e + (place.north - fix.north) * n) / metres;
    if (along > 0) {
      const distance = Math.hypot(place.east - fix.east, place.north - fix.north);
      return distance < within * metres ? { time: t, place, distance } : null;
    }
    if (along < -BEGINS && !leadsOut(ground, course, t)) return null;
  }
  return null;
}
