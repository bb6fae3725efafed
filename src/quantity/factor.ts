/** Exact conversion factors, each by definition. */
import type { Feet, Knots, Metres, MetresPerSecond, NauticalMiles } from "./units.ts";

/** Exactly, by definition. International nautical mile, First International Extraordinary Hydrographic Conference 1929. */
export const METRES_PER_NAUTICAL_MILE = 1852;
/** Exactly, by definition. International yard and pound agreement 1959. */
export const METRES_PER_FOOT = 0.3048;
/** Exactly: 1852 m in 3600 s. */
export const METRES_PER_SECOND_PER_KNOT = METRES_PER_NAUTICAL_MILE / 3600;
export const RADIANS_PER_DEGREE = Math.PI / 180;
export const DEGREES_PER_RADIAN = 180 / Math.PI;
/** Standard gravity, m/s2, exactly, by definition (3rd CGPM 1901). */
export const STANDARD_GRAVITY = 9.80665;

export const feetFromMetres = (m: Metres): Feet => m / METRES_PER_FOOT;
export const nauticalMilesFromMetres = (m: Metres): NauticalMiles => m / METRES_PER_NAUTICAL_MILE;
export const metresFromNauticalMiles = (nm: NauticalMiles): Metres => nm * METRES_PER_NAUTICAL_MILE;
export const knotsFromMetresPerSecond = (v: MetresPerSecond): Knots => v / METRES_PER_SECOND_PER_KNOT;
