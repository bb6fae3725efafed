/** The distance between two places near each other, fast, for telling the possible from the impossible. */
import { METRES_PER_NAUTICAL_MILE, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Degrees, Metres, NauticalMiles } from "../quantity/units.ts";

/** Mean radius of WGS84 (2a + b) / 3, metres. Moritz, "Geodetic Reference System 1980", J. Geodesy 74 (2000). */
export const MEAN_RADIUS: Metres = 6_371_008.8;
const { sin, cos, sqrt, asin, min } = Math;

/**
 * Great-circle distance on the mean sphere: within 0.6 % of the ellipsoid's, which no threshold here feels.
 * Method: haversine (R. W. Sinnott, "Virtues of the Haversine", Sky and Telescope 68, 1984).
 */
export function stepBetween(
  latitude1: Degrees,
  longitude1: Degrees,
  latitude2: Degrees,
  longitude2: Degrees,
): NauticalMiles {
  const a = sin(((latitude2 - latitude1) * RADIANS_PER_DEGREE) / 2);
  const b = sin(((longitude2 - longitude1) * RADIANS_PER_DEGREE) / 2);
  const h = a * a + cos(latitude1 * RADIANS_PER_DEGREE) * cos(latitude2 * RADIANS_PER_DEGREE) * b * b;
  return (2 * MEAN_RADIUS * asin(min(1, sqrt(h)))) / METRES_PER_NAUTICAL_MILE;
}
