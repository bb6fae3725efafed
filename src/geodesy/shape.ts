/** Courses as GeoJSON shapes, sampled along the true geodesic so that they are right on a map. */
import { lineString, polygon } from "@turf/turf";
import type { Feature, LineString, Position as LonLat, Polygon } from "geojson";
import { tanDeg } from "../quantity/angle.ts";
import type { AngleSize, Metres } from "../quantity/units.ts";
import { positionOn } from "./build.ts";
import type { Course } from "./course.ts";

/** Between samples a straight line on a map leaves the geodesic by under 1 m at latitudes to 80 degrees. */
const STEP: Metres = 2000;

/** The limit each side of a course: so many metres, or an angle at a station that stands so far along it. */
export type Limit =
  | { readonly kind: "linear"; readonly metres: Metres }
  | { readonly kind: "angular"; readonly degrees: AngleSize; readonly stationAlong: Metres };

/** Half the width of a corridor at a distance along its course. */
export const limitAt = (limit: Limit, along: Metres): Metres =>
  limit.kind === "linear" ? limit.metres : tanDeg(limit.degrees) * Math.abs(along - limit.stationAlong);

/**
 * The course from one distance along it to another. Longitudes run on past 180 degrees, so that a line over the
 * antimeridian stays in one piece.
 */
export function courseLine(course: Course, from: Metres, to: Metres): Feature<LineString> {
  return lineString(side(course, from, to, () => 0));
}

/** The corridor round a course between two distances along it, anticlockwise as RFC 7946 wants. */
export function courseCorridor(course: Course, from: Metres, to: Metres, limit: Limit): Feature<Polygon> {
  if (!(to > from)) throw new RangeError(`invalid corridor: from ${from} to ${to}`);
  const right = side(course, from, to, (along) => limitAt(limit, along));
  const left = side(course, from, to, (along) => -limitAt(limit, along)).reverse();
  return polygon([unroll([...right, ...left, right[0]!])]);
}

function side(course: Course, from: Metres, to: Metres, across: (along: Metres) => Metres): LonLat[] {
  if (!Number.isFinite(from) || !Number.isFinite(to))
    throw new RangeError(`invalid extent: ${from} to ${to}`);
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / STEP));
  const places = Array.from({ length: steps + 1 }, (_, i) => {
    const along = from + ((to - from) * i) / steps;
    const { latitude, longitude } = positionOn(course, along, across(along));
    return [longitude, latitude];
  });
  return unroll(places);
}

function unroll(places: readonly LonLat[]): LonLat[] {
  let previous = places[0]![0]!;
  return places.map(([longitude, latitude]) => {
    previous = longitude! - 360 * Math.round((longitude! - previous) / 360);
    return [previous, latitude!];
  });
}
