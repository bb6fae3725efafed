/** Points and runways that the user's own lists name: fixes need not be typed twice. */
import { METRES_PER_FOOT, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Feet, FeetMsl, NauticalMiles, TrueDegrees, VariationDegrees } from "../quantity/units.ts";
import { destination, inverse } from "./geodesic.ts";
import type { Position } from "./position.ts";

export const POINT_KINDS = ["vor", "ndb", "dme", "waypoint", "runway", "other"] as const;
export type PointKind = (typeof POINT_KINDS)[number];

export interface ListedPoint extends Position {
  readonly ident: string;
  readonly kind: PointKind;
  /** The station's own, where the list gives it. */
  readonly declination: VariationDegrees | null;
  readonly elevation: FeetMsl | null;
}

/** One landing direction, from its threshold to the far end. */
export interface ListedRunway {
  readonly ident: string;
  readonly threshold: Position;
  readonly end: Position;
  /** Of the threshold. */
  readonly elevation: FeetMsl | null;
  /** Its length was not known, so that `end` tells the direction alone. */
  readonly lengthAssumed?: true;
}

export interface PointList {
  readonly points: readonly ListedPoint[];
  readonly runways: readonly ListedRunway[];
}

/** Length of a runway of which only threshold and course are known, ft. Chosen: a short training runway; what counts is its direction. */
export const ASSUMED_RUNWAY_FT = 3000;

/** The far end of a runway from its threshold and true course. */
export function runwayEnd(threshold: Position, course: TrueDegrees, length: Feet): Position {
  const { latitude, longitude } = destination(threshold, course, length * METRES_PER_FOOT);
  return { latitude, longitude };
}

/** Lists to look idents up in, and the place near which they are meant. */
export interface KnownPoints extends PointList {
  /** Of two points of one ident the one nearer to here is taken. Null: neither is. */
  readonly near: Position | null;
}

/**
 * Two points of one ident nearer than this are one, NM. Chosen: lists that print tenths of a minute differ by so
 * much, while stations of one ident are kept far apart.
 */
const ONE_PLACE_NM = 0.1;

export const distanceNm = (a: Position, b: Position): NauticalMiles =>
  nauticalMilesFromMetres(inverse(a, b).distance);

const onePlace = (a: Position, b: Position): boolean => distanceNm(a, b) < ONE_PLACE_NM;

const sameIdent = (a: string, b: string): boolean => a.trim().toUpperCase() === b.trim().toUpperCase();

function nearestFirst<T>(found: readonly T[], place: (item: T) => Position, near: Position | null): T[] {
  if (near === null || found.length < 2) return [...found];
  return found
    .map((item) => ({ item, away: distanceNm(place(item), near) }))
    .sort((a, b) => a.away - b.away)
    .map(({ item }) => item);
}

/** All points of that ident, in capitals or not, the nearest first. */
export const pointsNamed = (known: KnownPoints, ident: string): ListedPoint[] =>
  nearestFirst(
    known.points.filter((p) => sameIdent(p.ident, ident)),
    (p) => p,
    known.near,
  );

/** All runways of that ident, the nearest first. */
export const runwaysNamed = (known: KnownPoints, ident: string): ListedRunway[] =>
  nearestFirst(
    known.runways.filter((r) => sameIdent(r.ident, ident)),
    (r) => r.threshold,
    known.near,
  );

/** Points whose ident begins with the text, then those that have it anywhere; each the nearest first, `most` in all. */
export function searchPoints(known: KnownPoints, text: string, most: number): ListedPoint[] {
  const sought = text.trim().toUpperCase();
  if (sought === "") return [];
  const beginning: ListedPoint[] = [];
  const holding: ListedPoint[] = [];
  for (const point of known.points) {
    const at = point.ident.toUpperCase().indexOf(sought);
    if (at === 0) beginning.push(point);
    else if (at > 0) holding.push(point);
  }
  const sorted = (points: ListedPoint[]) => nearestFirst(points, (p) => p, known.near);
  return [...sorted(beginning), ...sorted(holding)].slice(0, most);
}

/** One list of several: what stands in two of them at the same place is kept once, as the first has it. */
export function joinPointLists(lists: readonly PointList[]): PointList {
  const points = distinct(
    lists.flatMap((list) => list.points),
    (p) => p,
  );
  const runways = distinct(
    lists.flatMap((list) => list.runways),
    (r) => r.threshold,
  );
  return { points: points.kept, runways: runways.kept };
}

/** Each ident once a place, and how many were left out as repeated. */
export function distinct<T extends { readonly ident: string }>(
  items: readonly T[],
  place: (item: T) => Position,
): { readonly kept: T[]; readonly repeated: T[] } {
  const byIdent = new Map<string, T[]>();
  const [kept, repeated]: [T[], T[]] = [[], []];
  for (const item of items) {
    const key = item.ident.trim().toUpperCase();
    const others = byIdent.get(key) ?? [];
    if (others.some((other) => onePlace(place(other), place(item)))) {
      repeated.push(item);
      continue;
    }
    byIdent.set(key, [...others, item]);
    kept.push(item);
  }
  return { kept, repeated };
}
