/** Gradient, angle and rate of a descent, from each other. */
import { tanDeg } from "./angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "./factor.ts";
import type { AngleSize, Feet, FeetPerMinute, Knots } from "./units.ts";

/** Exactly, by definition: 6,076.1 ft. */
const FEET_PER_NAUTICAL_MILE = METRES_PER_NAUTICAL_MILE / METRES_PER_FOOT;

/** Feet lost in a nautical mile over the ground on a path so steep: 3° is 318 ft/NM. */
export const gradientOfAngle = (angle: AngleSize): Feet => tanDeg(angle) * FEET_PER_NAUTICAL_MILE;

export const angleOfGradient = (ftPerNm: Feet): AngleSize =>
  Math.atan(ftPerNm / FEET_PER_NAUTICAL_MILE) * DEGREES_PER_RADIAN;

/** Rate, ft/min, at a ground speed on a path that loses so many feet a mile. */
export const rateOfGradient = (ftPerNm: Feet, groundSpeed: Knots): FeetPerMinute =>
  (ftPerNm * groundSpeed) / 60;
