/** Headings held on the legs of a hold, against the directions that the legs have and what the wind needed. */

import { turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { headingForCourse, windOver } from "../wind/index.ts";
import type { WindFact } from "../wind/wind.ts";
import { directionAt, type HoldFrame, inMotion, meanDirection, rowsBetween } from "./frame.ts";
import { factorOf } from "./racetrack.ts";
import type { TurnFlown } from "./turn.ts";

/** The correction that held the inbound course in the wind of a turn onto it; null where that is not known. */
export function needOver(frame: HoldFrame, { from, to }: TurnFlown): number | null {
  const rows = inMotion(frame, rowsBetween(frame, from, to));
  if (!frame.wind || rows.end <= rows.start) return null;
  return needIn(windOver(frame.wind, frame.motion, rows), frame.course.azimuth);
}

function needIn(wind: WindFact, inbound: TrueDegrees): number | null {
  const { from, speed, trueAirspeed } = wind;
  if (wind.knowledge !== "full" || from === null || speed === null || !trueAirspeed) return null;
  return headingForCourse(inbound, trueAirspeed, { from, speed })?.correction ?? null;
}

export interface Direction {
  readonly headingTrueDeg: TrueDegrees | null;
  readonly trackTrueDeg: TrueDegrees;
  readonly correctionDeg: number | null;
  readonly correction95Deg: AngleSize | null;
}

/** Heading and track of a leg against the direction that it has. Errors of the wind are shared by all rows: a mean has the doubt of one. */
export function directionOfLeg(
  frame: HoldFrame,
  leg: TrueDegrees,
  leg95: AngleSize,
  from: UtcMillis,
  to: UtcMillis,
): Direction {
  const heading = meanDirection(frame, frame.heading, from, to);
  const track = meanDirection(frame, frame.track, from, to) ?? directionAt(frame, frame.track, from);
  const { start, end } = inMotion(frame, rowsBetween(frame, from, to));
  const sd = frame.wind?.alongFlight.headingSd.subarray(start, end).filter((v) => !Number.isNaN(v));
  const middle = sd && sd.length > 0 ? sd.sort()[sd.length >> 1]! : null;
  return {
    headingTrueDeg: heading,
    trackTrueDeg: track,
    correctionDeg: heading === null ? null : turnFrom(leg, heading),
    correction95Deg: heading === null || middle === null ? null : Math.hypot(Z95 * middle, leg95),
  };
}

/**
 * Correction outbound over the one that the wind needs inbound, with its 95 % doubt. An error e of the wind across
 * moves both: the heading outbound by e / V, the need by -e / V; so the factor is in doubt by (1 - factor) e / V over
 * the need, and not at all where the track outbound is parallel to the inbound course. The doubt of a course that is itself found is added.
 */
export function factorOfNeed(
  outbound: Direction,
  wind: WindFact | null,
  inbound: TrueDegrees,
  inbound95: AngleSize,
) {
  const { correctionDeg } = outbound;
  const need = wind && needIn(wind, inbound);
  if (correctionDeg === null || need === null) return null;
  const factor = factorOf(correctionDeg, need);
  if (factor === null) return null;
  const doubt = ((wind!.ellipse95.major / wind!.trueAirspeed!) * DEGREES_PER_RADIAN) / Math.abs(need);
  return { factor, doubt95: Math.hypot((1 - factor) * doubt, inbound95 / need) };
}
