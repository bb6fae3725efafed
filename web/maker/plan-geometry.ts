/** Where things lie on the plan on which points are picked: north-up, the whole flight and what is known around it. */
import { type BriefExercise, metresFromNauticalMiles, type Position, positionOn } from "../../src/index.ts";
import { boundsOf, planeAt, type View } from "../drawings/index.ts";

/** Degrees to pixels and back. */
export interface Ground {
  readonly width: number;
  readonly height: number;
  readonly pxPerMile: number;
  readonly toPx: (place: Position) => readonly [x: number, y: number];
  readonly toPlace: (x: number, y: number) => Position;
}

const MARGIN_PX = 30;
/** Room round the flight for points that it did not reach, as a share of its size. Own choice. */
const ROOM = 0.15;
const MOST_HEIGHT_PX = 460;

/** The ground of the flight; null where it has no place. */
export function groundOf(
  path: { latitude: Float64Array; longitude: Float64Array },
  width: number,
): Ground | null {
  const middle = path.latitude.length >> 1;
  const [lat0, lon0] = [path.latitude[middle], path.longitude[middle]];
  if (lat0 === undefined || lon0 === undefined || !Number.isFinite(lat0)) return null;
  const plane = planeAt(lat0, lon0);
  const bounds = boundsOf(Array.from(path.latitude, (lat, i) => plane.place(lat, path.longitude[i])));
  if (!bounds) return null;
  const room = ROOM * Math.max(bounds.east - bounds.west, bounds.north - bounds.south, 2);
  const [wide, high] = [bounds.east - bounds.west + 2 * room, bounds.north - bounds.south + 2 * room];
  const pxPerMile = Math.min((width - 2 * MARGIN_PX) / wide, (MOST_HEIGHT_PX - 2 * MARGIN_PX) / high);
  const height = Math.ceil(high * pxPerMile + 2 * MARGIN_PX);
  const left = (width - wide * pxPerMile) / 2 - (bounds.west - room) * pxPerMile;
  const top = MARGIN_PX + (bounds.north + room) * pxPerMile;
  // the plane is linear in degrees, so two of its points give the way back
  const [milesPerLon] = plane.place(lat0, lon0 + 1);
  const [, milesPerLat] = plane.place(lat0 + 1, lon0);
  return {
    width,
    height,
    pxPerMile,
    toPx: ({ latitude, longitude }) => {
      const [east, north] = plane.place(latitude, longitude);
      return [left + east * pxPerMile, top - north * pxPerMile];
    },
    toPlace: (x, y) => {
      const longitude = lon0 + (x - left) / pxPerMile / milesPerLon;
      return {
        latitude: Math.max(-90, Math.min(90, lat0 + (top - y) / pxPerMile / milesPerLat)),
        longitude: longitude > 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude,
      };
    },
  };
}

/** The ground enlarged and moved. */
export function viewed(ground: Ground, { zoom, x, y }: View): Ground {
  return {
    ...ground,
    pxPerMile: ground.pxPerMile * zoom,
    toPx: (place) => {
      const [px, py] = ground.toPx(place);
      return [px * zoom + x, py * zoom + y];
    },
    toPlace: (px, py) => ground.toPlace((px - x) / zoom, (py - y) / zoom),
  };
}

/** Lengths drawn of a course or final, and of the inbound leg of a hold, NM: about a lesson's. Own choice. */
const COURSE_NM = 12;
const INBOUND_NM = 4;

/** The line that an exercise asks for, end to end: of a course, leg, hold or final. Null for others. */
export function lineMeant(exercise: BriefExercise): readonly [Position, Position] | null {
  if (exercise.kind === "course" && exercise.fromFix) return [exercise.fromFix, exercise.fix];
  if (exercise.kind !== "course" && exercise.kind !== "hold" && exercise.kind !== "approach") return null;
  const miles = exercise.kind === "hold" ? INBOUND_NM : COURSE_NM;
  const way = exercise.kind === "course" && exercise.form === "from" ? 1 : -1;
  return [exercise.course.origin, positionOn(exercise.course, way * metresFromNauticalMiles(miles))];
}
