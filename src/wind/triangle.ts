/**
 * The wind triangle: wind, heading, airspeed, track and ground speed, any two sides giving the third.
 *
 * All directions are true (or all magnetic: the triangle does not mind), wind is from, drift and correction are
 * right positive. Formulas: E. Williams, *Aviation Formulary* V1.47, "Wind Triangles".
 */
import { cosDeg, direction, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Knots, TrueDegrees, TurnDegrees } from "../quantity/units.ts";

export interface Wind {
  readonly from: TrueDegrees;
  readonly speed: Knots;
}

export interface AirVector {
  readonly heading: TrueDegrees;
  readonly trueAirspeed: Knots;
}

export interface GroundVector {
  readonly trackAngle: TrueDegrees;
  readonly groundSpeed: Knots;
}

/** The wind that turns an air vector into a ground vector. Calm air is given as from 0. */
export function windBetween(air: AirVector, ground: GroundVector): Wind {
  return windOfAir(
    ground.groundSpeed * sinDeg(ground.trackAngle) - air.trueAirspeed * sinDeg(air.heading),
    ground.groundSpeed * cosDeg(ground.trackAngle) - air.trueAirspeed * cosDeg(air.heading),
  );
}

/** The wind of air that moves over the ground with these components. */
export function windOfAir(east: Knots, north: Knots): Wind {
  const speed = Math.hypot(east, north);
  return { from: speed === 0 ? 0 : directionOf(-east, -north), speed };
}

/** The heading that holds a course, the correction it contains and the ground speed; null where the wind is too strong. */
export function headingForCourse(
  course: TrueDegrees,
  trueAirspeed: Knots,
  wind: Wind,
): {
  readonly heading: TrueDegrees;
  /** Heading less course. */
  readonly correction: TurnDegrees;
  readonly groundSpeed: Knots;
} | null {
  const swc = (wind.speed / trueAirspeed) * sinDeg(wind.from - course);
  if (!(Math.abs(swc) <= 1)) return null;
  const groundSpeed = trueAirspeed * Math.sqrt(1 - swc * swc) - wind.speed * cosDeg(wind.from - course);
  if (!(groundSpeed > 0)) return null;
  const correction = Math.asin(swc) * DEGREES_PER_RADIAN;
  return { heading: direction(course + correction), correction, groundSpeed };
}

/** Track, ground speed and drift (track less heading) of a heading flown in a wind; null where the aircraft stands still. */
export function groundOf(
  air: AirVector,
  wind: Wind,
): (GroundVector & { readonly drift: TurnDegrees }) | null {
  const east = air.trueAirspeed * sinDeg(air.heading) - wind.speed * sinDeg(wind.from);
  const north = air.trueAirspeed * cosDeg(air.heading) - wind.speed * cosDeg(wind.from);
  const groundSpeed = Math.hypot(east, north);
  if (!(groundSpeed > 0)) return null;
  const trackAngle = directionOf(east, north);
  return { trackAngle, groundSpeed, drift: turnFrom(air.heading, trackAngle) };
}

/** Headwind, and crosswind positive from the right, on a direction. */
export function windComponents(
  wind: Wind,
  on: TrueDegrees,
): { readonly headwind: Knots; readonly fromRight: Knots } {
  return {
    headwind: wind.speed * cosDeg(wind.from - on),
    fromRight: wind.speed * sinDeg(wind.from - on),
  };
}
