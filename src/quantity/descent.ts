/** Descents in numbers: rate, gradient and angle from each other. Descent positive throughout. */
import { tanDeg } from "./angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "./factor.ts";
import type { AngleSize, Feet, FeetPerMinute, Knots, NauticalMiles } from "./units.ts";

/** Exactly: 1852 / 0.3048. */
const FEET_PER_NAUTICAL_MILE = METRES_PER_NAUTICAL_MILE / METRES_PER_FOOT;

/** Feet a nautical mile of an angle: 318 at 3 degrees. By the tangent: the height over the way along the ground. */
export const gradientOf = (angle: AngleSize): Feet => FEET_PER_NAUTICAL_MILE * tanDeg(angle);

/** The angle of a height over a distance; negative where it climbs. */
export const angleOf = (height: Feet, distance: NauticalMiles): AngleSize =>
  Math.atan2(height, distance * FEET_PER_NAUTICAL_MILE) * DEGREES_PER_RADIAN;

/** The rate that follows an angle at a ground speed. */
export const rateOn = (angle: AngleSize, groundSpeed: Knots): FeetPerMinute =>
  (groundSpeed * gradientOf(angle)) / 60;

/** The rate that loses a height over a distance at a ground speed; infinite where no distance is left. */
export const rateNeeded = (height: Feet, distance: NauticalMiles, groundSpeed: Knots): FeetPerMinute =>
  (height / Math.max(0, distance)) * (groundSpeed / 60);
