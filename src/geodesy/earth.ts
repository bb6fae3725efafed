/** The ellipsoid that all geodesy here stands on, with the one constructor that GeographicLib's types leave awkward. */
import geographiclib from "geographiclib-geodesic";
import type { TrueDegrees } from "../quantity/units.ts";
import type { Position } from "./position.ts";

/** An ellipsoid as GeographicLib knows it: WGS84 in all use, a sphere where a test has a spherical source. */
export type Earth = typeof geographiclib.Geodesic.WGS84;
/** A geodesic, unbounded both ways, ready to give the place at any distance. */
export type GeodesicLine = InstanceType<typeof geographiclib.GeodesicLine.GeodesicLine>;

export const WGS84: Earth = geographiclib.Geodesic.WGS84;
/** First eccentricity squared of WGS84. */
export const E2 = WGS84.f * (2 - WGS84.f);

/** An ellipsoid of another size; flattening 0 is a sphere. */
export const earthOf = (equatorialRadius: number, flattening: number): Earth =>
  new geographiclib.Geodesic.Geodesic(equatorialRadius, flattening);

/** The geodesic that passes `from` at `azimuth`. */
export const lineThrough = (earth: Earth, from: Position, azimuth: TrueDegrees): GeodesicLine =>
  new geographiclib.GeodesicLine.GeodesicLine(earth, from.latitude, from.longitude, azimuth);

/** Throws where a place is no place: latitude beyond 90 degrees, or a number that is not finite. */
export function requirePosition(name: string, { latitude, longitude }: Position): void {
  if (!(Math.abs(latitude) <= 90)) throw new RangeError(`invalid latitude of ${name}: ${latitude}`);
  if (!Number.isFinite(longitude)) throw new RangeError(`invalid longitude of ${name}: ${longitude}`);
}
