/** The two geodesic problems on WGS84, by GeographicLib. Metres here; nautical miles from `track/` up. */
import { direction } from "../quantity/angle.ts";
import type { Metres, TrueDegrees } from "../quantity/units.ts";
import { WGS84 } from "./earth.ts";
import type { Position } from "./position.ts";

/** The place reached after a distance along the geodesic that leaves `from` at `azimuth`. */
export function destination(
  from: Position,
  azimuth: TrueDegrees,
  distance: Metres,
): Position & { readonly azimuth: TrueDegrees } {
  const r = WGS84.Direct(from.latitude, from.longitude, azimuth, distance);
  return { latitude: r.lat2!, longitude: r.lon2!, azimuth: direction(r.azi2!) };
}

/** Distance and azimuths of the shortest geodesic between two places. */
export function inverse(
  from: Position,
  to: Position,
): { readonly distance: Metres; readonly azimuthAtStart: TrueDegrees; readonly azimuthAtEnd: TrueDegrees } {
  const r = WGS84.Inverse(from.latitude, from.longitude, to.latitude, to.longitude);
  return { distance: r.s12!, azimuthAtStart: direction(r.azi1!), azimuthAtEnd: direction(r.azi2!) };
}
