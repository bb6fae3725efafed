/**
 * Earth-centred coordinates of places on the WGS84 ellipsoid, in which no meridian, pole or plane is special.
 *
 * The smoother works on these three axes at zero height. There is no local plane to re-centre: nothing is
 * approximated, and a flight across the antimeridian or over a pole is a flight like any other.
 * Source: Torge & Müller, Geodesy, 4th ed. 2012, section 4.1.3 (geodetic to Cartesian, h = 0 and its inverse).
 */
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Degrees } from "../quantity/units.ts";

/** WGS84 equatorial radius, m, and flattening: NGA.STND.0036 (2014), table 3.1. */
const A = 6378137;
const F = 1 / 298.257223563;
/** First eccentricity squared. */
const E2 = F * (2 - F);

const { sin, cos, sqrt, atan2 } = Math;

/** Writes x, y, z in metres of the place on the ellipsoid to `out[at]` and the two after it. */
export function toCartesian(latitude: Degrees, longitude: Degrees, out: Float64Array, at: number): void {
  const phi = latitude * RADIANS_PER_DEGREE;
  const lambda = longitude * RADIANS_PER_DEGREE;
  const s = sin(phi);
  const n = A / sqrt(1 - E2 * s * s); // radius of curvature in the prime vertical
  const p = n * cos(phi);
  out[at] = p * cos(lambda);
  out[at + 1] = p * sin(lambda);
  out[at + 2] = n * (1 - E2) * s;
}

/** Latitude of a place on the ellipsoid; a height of h metres costs under h * 1e-7 degrees. */
export const latitudeOf = (x: number, y: number, z: number): Degrees =>
  atan2(z, (1 - E2) * sqrt(x * x + y * y)) * DEGREES_PER_RADIAN;

export const longitudeOf = (x: number, y: number): Degrees => atan2(y, x) * DEGREES_PER_RADIAN;
