/** Changes of height as far as the wind cares: heights that are held stay one height, and a climb is known by its whole extent. */
import type { Feet } from "../quantity/units.ts";

/** Changes of height below this are not counted, ft. */
const DEADBAND: Feet = 200;

export interface Climbs {
  /** Change of height counted at each fact, ft, never negative. */
  readonly climbed: Float64Array;
  /** Extent of the whole climb or descent that it is part of, ft; 0 where nothing is counted. */
  readonly extent: Float64Array;
}

/** Unknown heights count as held. */
export function climbsOf(altitude: Float64Array, count: number): Climbs {
  const climbed = new Float64Array(count);
  const extent = new Float64Array(count);
  let reference = Number.NaN;
  let side = 0;
  let sum = 0;
  let members: number[] = [];
  const close = () => {
    for (const i of members) extent[i] = sum;
    members = [];
    sum = 0;
  };
  for (let i = 0; i < count; i++) {
    const h = altitude[i]!;
    if (Number.isNaN(h)) continue;
    if (Number.isNaN(reference)) reference = h;
    const change = h - reference;
    if (Math.abs(change) <= DEADBAND) continue;
    if (Math.sign(change) !== side) close();
    side = Math.sign(change);
    climbed[i] = Math.abs(change);
    sum += climbed[i]!;
    members.push(i);
    reference = h;
  }
  close();
  return { climbed, extent };
}
