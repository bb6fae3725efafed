/** Changes of height as far as the wind cares: heights that are held stay one height. */
import type { Feet } from "../quantity/units.ts";

/** Changes of height below this are not counted, ft. */
const DEADBAND: Feet = 200;

/** Change of height counted at each fact, ft, never negative; unknown heights count as held. */
export function climbedOf(altitude: Float64Array, count: number): Float64Array {
  const climbed = new Float64Array(count);
  let reference = Number.NaN;
  for (let i = 0; i < count; i++) {
    const h = altitude[i]!;
    if (Number.isNaN(h)) continue;
    if (Number.isNaN(reference)) reference = h;
    const change = Math.abs(h - reference);
    if (change <= DEADBAND) continue;
    climbed[i] = change;
    reference = h;
  }
  return climbed;
}
