/** One small step over the ellipsoid, and the offset of one place from another near it. */

import type { Position } from "../geodesy/position.ts";
import { RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Degrees, Metres } from "../quantity/units.ts";

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
