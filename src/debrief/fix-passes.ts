/** The passes of a fix: when a flight came to it, and from where the way to it led back. */
import { inverse, measureAround } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { NauticalMiles, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** Over a fix, as whoever holds at it passes it. Chosen: a lap that wind carried off comes back so near. */
export const OVER_FIX: NauticalMiles = 0.5;
/** Away from it, before it is passed again. Chosen: a turn at rate one is as wide. */
const AWAY: NauticalMiles = 0.75;

export interface FixPass {
  /** The nearest of the pass. */
  readonly row: number;
  readonly time: UtcMillis;
  readonly off: NauticalMiles;
  /** The farthest since the pass before. */
  readonly wayBack: number;
}

/** In flown order. */
export function passesOf(fix: Position, motion: Motion): FixPass[] {
  const { time, latitude, longitude, length } = motion;
  const { distance } = measureAround(fix, latitude, longitude);
  const passes: FixPass[] = [];
  let [nearest, least]: [number, NauticalMiles] = [-1, OVER_FIX];
  let [farthest, most]: [number, NauticalMiles] = [0, 0];
  for (let row = 0; row < length; row++) {
    const off = nauticalMilesFromMetres(distance[row]!);
    if (off < least) [nearest, least] = [row, off];
    if (nearest >= 0 && (off > AWAY || row === length - 1)) {
      passes.push({ row: nearest, time: time[nearest]!, off: least, wayBack: farthest });
      [nearest, least, farthest, most] = [-1, OVER_FIX, row, 0];
    }
    if (nearest < 0 && off > most) [farthest, most] = [row, off];
  }
  return passes;
}

/** The direction made good from one time to another. */
export function madeGood(
  { time, latitude, longitude, length }: Motion,
  from: UtcMillis,
  to: UtcMillis,
): TrueDegrees {
  const at = (t: UtcMillis): Position => {
    const row = firstAtOrAfter(time, t, 0, length - 1);
    return { latitude: latitude[row]!, longitude: longitude[row]! };
  };
  return inverse(at(from), at(to)).azimuthAtEnd;
}
