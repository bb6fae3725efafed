/** A descent path over the round earth: how high it is at a distance from where it meets the ground, and at what angle a place is seen from there. */
import { cosDeg, tanDeg } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize, Metres } from "../quantity/units.ts";

/** Mean radius of the earth, m. Source: H. Moritz, "Geodetic Reference System 1980". Local radii differ by 0.3 %: 3 cm in the curvature at 10 NM. */
const RADIUS = 6_371_008.8;

/**
 * `straight`: a straight line in space, as radio and satellite beams are; it rises from the curved ground by
 * distance^2 / 2R, 32 ft at 6 NM. Otherwise the angle is kept against the ground below, as a barometric path does.
 */
export type PathShape = "straight" | "level-referenced";

/** Height over the level of the origin. */
export function pathHeight(angle: AngleSize, distance: Metres, shape: PathShape): Metres {
  if (shape === "level-referenced") return distance * tanDeg(angle);
  // law of sines in the triangle of earth's centre, origin and the place: r = R cos(a) / cos(a + s / R)
  const turn = (distance / RADIUS) * DEGREES_PER_RADIAN;
  return RADIUS * (cosDeg(angle) / cosDeg(angle + turn) - 1);
}

/** The angle above the horizontal at which a place is seen from the origin: the inverse of `pathHeight`. */
export function angleSeen(distance: Metres, height: Metres, shape: PathShape): AngleSize {
  if (shape === "level-referenced") return Math.atan2(height, distance) * DEGREES_PER_RADIAN;
  const turn = distance / RADIUS;
  const up = (RADIUS + height) * Math.cos(turn) - RADIUS;
  return Math.atan2(up, (RADIUS + height) * Math.sin(turn)) * DEGREES_PER_RADIAN;
}
