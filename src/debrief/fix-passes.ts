/** The passes of a fix: when a flight came to it, and from where the way to it led back. */
import { inverse } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { NauticalMiles, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** Over the fix, as whoever holds at it passes it; and away from it, before it is passed again. Chosen: a lap that wind carried off comes back so near, and a turn at rate one is as wide. */
const OVER: NauticalMiles = 0.5;
const AWAY: NauticalMiles = 0.75;

export interface FixPass {
  /** The nearest of the pass. */
  readonly row: number;
  readonly time: UtcMillis;
  readonly off: NauticalMiles;
  /** The farthest since the pass before. */
  readonly wayBack: number;
}

const placeAt = ({ latitude, longitude }: Motion, row: number): Position => ({
  latitude: latitude[row]!,
  longitude: longitude[row]!,
});

/** In flown order. */
export function passesOf(fix: Position, motion: Motion): FixPass[] {
  const { time, length } = motion;
  const passes: FixPass[] = [];
  let [nearest, least]: [number, NauticalMiles] = [-1, OVER];
  let [farthest, most]: [number, NauticalMiles] = [0, 0];
  for (let row = 0; row < length; row++) {
    const off = inverse(fix, placeAt(motion, row)).distance / METRES_PER_NAUTICAL_MILE;
    if (off < least) [nearest, least] = [row, off];
    if (nearest >= 0 && (off > AWAY || row === length - 1)) {
      passes.push({ row: nearest, time: time[nearest]!, off: least, wayBack: farthest });
      [nearest, least, farthest, most] = [-1, OVER, row, 0];
    }
    if (nearest < 0 && off > most) [farthest, most] = [row, off];
  }
  return passes;
}

/** The direction made good from one time to another. */
export function madeGood(motion: Motion, from: UtcMillis, to: UtcMillis): TrueDegrees {
  const at = (t: UtcMillis) =>
    placeAt(motion, Math.min(firstAtOrAfter(motion.time as Float64Array, t), motion.length - 1));
  return inverse(at(from), at(to)).azimuthAtEnd;
}
