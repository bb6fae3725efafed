/** Courses made and used: through a fix at an azimuth, from a fix to a fix, and the place at a distance along and across. */
import { direction } from "../quantity/angle.ts";
import type { Metres, TrueDegrees } from "../quantity/units.ts";
import type { Course } from "./course.ts";
import { requirePosition } from "./earth.ts";
import { destination, inverse } from "./geodesic.ts";
import type { Position } from "./position.ts";

/** The course that passes the fix at a true azimuth; without a length it has no far end. */
export function courseThrough(fix: Position, azimuth: TrueDegrees, length: Metres | null = null): Course {
  requirePosition("fix", fix);
  if (!Number.isFinite(azimuth)) throw new RangeError(`invalid azimuth: ${azimuth}`);
  if (length !== null && !(length > 0 && length < Infinity))
    throw new RangeError(`invalid length: ${length}`);
  const origin = { latitude: fix.latitude, longitude: fix.longitude };
  return { origin, azimuth: direction(azimuth), length };
}

/** The course from one fix to another by the shortest way; the two must be different places. */
export function courseBetween(from: Position, to: Position): Course {
  requirePosition("from", from);
  requirePosition("to", to);
  const { distance, azimuthAtStart } = inverse(from, to);
  return courseThrough(from, azimuthAtStart, distance);
}

/**
 * The place at a distance along a course (negative: before its origin) and then square off it, right positive,
 * with the course there: the azimuth of the course at the foot, not of the way to the side.
 */
export function positionOn(
  course: Course,
  along: Metres,
  across: Metres = 0,
): Position & { readonly course: TrueDegrees } {
  const foot = destination(course.origin, course.azimuth, along);
  if (across === 0) return { latitude: foot.latitude, longitude: foot.longitude, course: foot.azimuth };
  const { latitude, longitude } = destination(foot, foot.azimuth + 90, across);
  return { latitude, longitude, course: foot.azimuth };
}
