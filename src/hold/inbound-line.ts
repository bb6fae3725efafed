/** The last straight piece of an arm, where an inbound leg is established if it ever is: its line and how well it is known. */
import { directionOf } from "../quantity/angle.ts";
import type { Metres, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { Ground, Place } from "./ground.ts";

export interface Line {
  /** Of the whole arm. */
  readonly from: UtcMillis;
  readonly to: UtcMillis;
  /** Where the line ends. */
  readonly end: Place;
  readonly direction: TrueDegrees;
  readonly seconds: Seconds;
  readonly length: Metres;
}

/** Headings stay within this of the last ones, degrees. Tuned. */
const STRAIGHT = 5;
const LAST_SECONDS = 8;
const LONGEST: Seconds = 90;

/** The straight piece that ends at `end` and does not begin before `from`. Least squares across, on the map. */
export function lastStraight(ground: Ground, from: UtcMillis, end: UtcMillis): Line {
  const last = Math.max(from, end - LAST_SECONDS * 1000);
  let sum = 0;
  let count = 0;
  for (let t = end; t >= last; t -= 1000, count++) sum += ground.headingAt(t);
  let start = last;
  while (start - 1000 >= from && end - start < LONGEST * 1000) {
    const heading = ground.headingAt(start - 1000);
    if (Math.abs(heading - sum / count) > STRAIGHT) break;
    sum += heading;
    count++;
    start -= 1000;
  }
  const a = ground.place(start);
  const b = ground.place(end);
  const length = Math.hypot(b.east - a.east, b.north - a.north);
  const chord = directionOf(b.east - a.east, b.north - a.north);
  // offsets from the chord, square to it
  const ux = (b.east - a.east) / length;
  const uy = (b.north - a.north) / length;
  let [n, s, ss, x, sx] = [0, 0, 0, 0, 0];
  for (let t = start; t <= end; t += 1000) {
    const p = ground.place(t);
    const along = (p.east - b.east) * ux + (p.north - b.north) * uy;
    const across = (p.east - b.east) * uy - (p.north - b.north) * ux;
    n++;
    s += along;
    ss += along * along;
    x += across;
    sx += along * across;
  }
  const slope = (n * sx - s * x) / (n * ss - s * s);
  const offset = (x - slope * s) / n;
  return {
    from,
    to: end,
    end: { east: b.east + offset * uy, north: b.north - offset * ux },
    direction: chord + (Number.isFinite(slope) ? (Math.atan(slope) * 180) / Math.PI : 0),
    seconds: (end - start) / 1000,
    length,
  };
}
