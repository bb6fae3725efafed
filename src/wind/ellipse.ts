/** The 95 % ellipse of a wind vector from its variances. */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { WindEllipse } from "./wind.ts";

/** sqrt of the 95 % point of chi-square with 2 degrees of freedom: sqrt(-2 ln 0.05), by definition. */
export const SEMI_AXIS_95 = Math.sqrt(-2 * Math.log(0.05));
/** Half-width of a 95 % interval of a normal deviate, in standard deviations: the 97.5 % point. */
export const HALF_WIDTH_95 = 1.959964;

/** Standard deviations along the axes of the ellipse, and the direction of the major one, degrees from north, [0, 180). */
export function principalAxes(
  varianceEast: number,
  varianceNorth: number,
  covariance: number,
): { readonly major: number; readonly minor: number; readonly direction: number } {
  const middle = (varianceEast + varianceNorth) / 2;
  const half = (varianceNorth - varianceEast) / 2;
  const radius = Math.hypot(half, covariance);
  // north is the first axis of a direction, so the doubled angle is atan2(covariance, half)
  const direction = (Math.atan2(covariance, half) * DEGREES_PER_RADIAN) / 2;
  return {
    major: Math.sqrt(Math.max(0, middle + radius)),
    minor: Math.sqrt(Math.max(0, middle - radius)),
    direction: direction < 0 ? direction + 180 : direction,
  };
}

export function ellipse95(varianceEast: number, varianceNorth: number, covariance: number): WindEllipse {
  const axes = principalAxes(varianceEast, varianceNorth, covariance);
  return {
    major: SEMI_AXIS_95 * axes.major,
    minor: SEMI_AXIS_95 * axes.minor,
    majorAxis: axes.direction % 180,
  };
}

/** Variance along a unit vector. */
export const varianceAlong = (
  varianceEast: number,
  varianceNorth: number,
  covariance: number,
  east: number,
  north: number,
): number => varianceEast * east * east + 2 * covariance * east * north + varianceNorth * north * north;
