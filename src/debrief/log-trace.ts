/** A few places of a flight, by which its log is known again, in whatever file it lies. */
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Degrees } from "../quantity/units.ts";
import type { Track } from "../track/track.ts";

/** Chosen: enough that no two flights share them, few enough to read. */
const PARTS = 10;
/** Digits after the point: some 11 m, about what a receiver knows. */
const DIGITS = 4;

const placed = (degrees: Degrees): Degrees => Number(degrees.toFixed(DIGITS));

/**
 * Latitude and longitude (WGS84, degrees, rounded to 4 digits) where the flight begins, at each tenth of its time and
 * where it ends; of a log without times at each tenth of its points.
 */
export function traceOf(track: Track, timed: boolean): [latitude: Degrees, longitude: Degrees][] {
  const last = track.length - 1;
  const [first, span] = [track.time[0]!, track.time[last]! - track.time[0]!];
  return Array.from({ length: PARTS + 1 }, (_, part) => {
    const row = timed
      ? firstAtOrAfter(track.time, first + (span * part) / PARTS, 0, last)
      : Math.round((last * part) / PARTS);
    return [placed(track.latitude[row]!), placed(track.longitude[row]!)];
  });
}
