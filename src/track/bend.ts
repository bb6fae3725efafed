/** How far a path bends at a point, and how long its steps are, in Cartesian places. */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize, Metres } from "../quantity/units.ts";

/** Angle between the step from one row to the next and the step from there to a third, 0 to 180. */
export function bendAt(place: Float64Array, from: number, at: number, to: number): AngleSize {
  const [i, j, l] = [3 * from, 3 * at, 3 * to];
  const ax = place[j]! - place[i]!;
  const ay = place[j + 1]! - place[i + 1]!;
  const az = place[j + 2]! - place[i + 2]!;
  const bx = place[l]! - place[j]!;
  const by = place[l + 1]! - place[j + 1]!;
  const bz = place[l + 2]! - place[j + 2]!;
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  const size = Math.sqrt(cx * cx + cy * cy + cz * cz);
  return Math.atan2(size, ax * bx + ay * by + az * bz) * DEGREES_PER_RADIAN;
}

/** Straight between two rows. */
export function distanceBetween(place: Float64Array, from: number, to: number): Metres {
  const [i, j] = [3 * from, 3 * to];
  const x = place[j]! - place[i]!;
  const y = place[j + 1]! - place[i + 1]!;
  const z = place[j + 2]! - place[i + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}
