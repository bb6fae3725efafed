/** Directions and differences of directions. */
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from "./factor.ts";
import type { MagneticDegrees, TrueDegrees, TurnDegrees, VariationDegrees } from "./units.ts";

/** The direction brought to [0, 360). */
export function direction(degrees: number): number {
  if (degrees > 0 && degrees < 360) return degrees; // most are, and the remainder is slow
  const d = degrees % 360;
  return d < 0 ? d + 360 : d === 0 ? 0 : d; // no negative zero
}

/** A direction as it is spoken: three figures, 001 to 360. */
export const threeFigures = (degrees: number): string =>
  String(direction(Math.round(degrees)) || 360).padStart(3, "0");

/** The turn from one direction to another by the shorter way, right positive, [-180, 180). */
export function turnFrom(from: number, to: number): TurnDegrees {
  return direction(to - from + 180) - 180;
}

export const trueFromMagnetic = (course: MagneticDegrees, variation: VariationDegrees): TrueDegrees =>
  direction(course + variation);
export const magneticFromTrue = (course: TrueDegrees, variation: VariationDegrees): MagneticDegrees =>
  direction(course - variation);

export const sinDeg = (degrees: number): number => Math.sin(degrees * RADIANS_PER_DEGREE);
export const cosDeg = (degrees: number): number => Math.cos(degrees * RADIANS_PER_DEGREE);
export const tanDeg = (degrees: number): number => Math.tan(degrees * RADIANS_PER_DEGREE);
/** The direction of a vector given by its east and north components, degrees from north, [0, 360). */
export const directionOf = (east: number, north: number): number =>
  direction(Math.atan2(east, north) * DEGREES_PER_RADIAN);
