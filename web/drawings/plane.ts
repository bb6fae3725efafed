/** Positions as miles east and north of a point, good enough for a drawing of one flight. */

/** Length of a minute of latitude is taken as one mile: off by at most 0.5 %, less than a line's width on a page. */
const MINUTES_PER_DEGREE = 60;

export interface Plane {
  /** Miles east and north. */
  readonly place: (latitude: number, longitude: number) => readonly [east: number, north: number];
}

/** Plate carrée with its true scale at the middle latitude; for flights of a few hundred miles, off the poles. */
export function planeAt(latitude: number, longitude: number): Plane {
  const shrink = Math.cos((latitude * Math.PI) / 180);
  return {
    place: (lat, lon) => {
      // The shorter way round, so that a flight over the antimeridian stays whole.
      const east = ((((lon - longitude + 180) % 360) + 360) % 360) - 180;
      return [east * MINUTES_PER_DEGREE * shrink, (lat - latitude) * MINUTES_PER_DEGREE];
    },
  };
}

export interface Bounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

export function boundsOf(points: Iterable<readonly [number, number]>): Bounds | null {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return east >= west ? { west, east, south, north } : null;
}

/** Millimetres for a mile, from large to small, so that overviews of different flights can be compared. Own choice. */
const STEPPED_MM_PER_MILE = [20, 10, 5, 2, 1, 0.5, 0.2, 0.1] as const;

/** The largest step at which so many miles fit into so many millimetres both ways; the smallest at worst. */
export function steppedScale(milesWide: number, milesHigh: number, roomMm: number, highMm: number): number {
  const last = STEPPED_MM_PER_MILE[STEPPED_MM_PER_MILE.length - 1];
  return STEPPED_MM_PER_MILE.find((mm) => milesWide * mm <= roomMm && milesHigh * mm <= highMm) ?? last;
}

/** A round length for a scale bar that is at most so many px long. */
export function barMiles(pxPerMile: number, mostPx: number): number {
  return [100, 50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1].find((nm) => nm * pxPerMile <= mostPx) ?? 0.05;
}
