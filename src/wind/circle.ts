/**
 * Wind as the centre of a circle: at one airspeed, in one wind, the tips of all ground velocities lie on a circle
 * whose radius is the airspeed and whose centre is the velocity of the air.
 *
 * A good start value and a good picture for turns; it fails on a few straight courses, where only the full estimate
 * knows its doubt.
 */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { Knots } from "../quantity/units.ts";
import type { GroundVector } from "./triangle.ts";

export interface VelocityCircle {
  /** Velocity of the air over the ground (toward). */
  readonly airEast: Knots;
  readonly airNorth: Knots;
  readonly trueAirspeed: Knots;
  /** Root mean square distance of the tips from the circle. */
  readonly rms: Knots;
}

/** The circle through the tips of three ground velocities; null where they lie on a line. Source: D. Gray, "Using GPS to accurately establish true airspeed", 1998. */
export function circleOfThree(
  legs: readonly [GroundVector, GroundVector, GroundVector],
): VelocityCircle | null {
  const [a, b, c] = legs.map((l) => [
    l.groundSpeed * sinDeg(l.trackAngle),
    l.groundSpeed * cosDeg(l.trackAngle),
  ]);
  const bx = b![0]! - a![0]!;
  const by = b![1]! - a![1]!;
  const cx = c![0]! - a![0]!;
  const cy = c![1]! - a![1]!;
  const d = 2 * (bx * cy - by * cx);
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  if (!(Math.abs(d) > 1e-9 * (b2 + c2))) return null;
  const x = (cy * b2 - by * c2) / d;
  const y = (bx * c2 - cx * b2) / d;
  return { airEast: a![0]! + x, airNorth: a![1]! + y, trueAirspeed: Math.hypot(x, y), rms: 0 };
}

/**
 * The circle that fits many ground velocities; null for fewer than three or for points on a line.
 * Method: G. Taubin, IEEE Trans. PAMI 13 (1991) 1115-1138, by Newton's iteration as in N. Chernov, *Circular and
 * Linear Regression*, 2010, section 5.10.
 */
export function fitCircle(east: ArrayLike<number>, north: ArrayLike<number>): VelocityCircle | null {
  const n = east.length;
  if (n < 3) return null;
  let meanX = 0;
  let meanY = 0;
  for (let i = 0; i < n; i++) {
    meanX += east[i]! / n;
    meanY += north[i]! / n;
  }
  let xx = 0;
  let yy = 0;
  let xy = 0;
  let xz = 0;
  let yz = 0;
  let zz = 0;
  for (let i = 0; i < n; i++) {
    const x = east[i]! - meanX;
    const y = north[i]! - meanY;
    const z = x * x + y * y;
    xx += (x * x) / n;
    yy += (y * y) / n;
    xy += (x * y) / n;
    xz += (x * z) / n;
    yz += (y * z) / n;
    zz += (z * z) / n;
  }
  const z = xx + yy;
  const covXY = xx * yy - xy * xy;
  if (!(covXY > 1e-12 * z * z)) return null;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const a1 = (zz - z * z) * z + 4 * covXY * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - (zz - z * z) * covXY;
  let root = 0;
  let value = Infinity;
  for (let i = 0; i < 30; i++) {
    const next = a0 + root * (a1 + root * (a2 + root * a3));
    if (Math.abs(next) > Math.abs(value)) break; // Newton from zero falls monotonically to the root
    value = next;
    const slope = a1 + root * (2 * a2 + root * 3 * a3);
    const moved = root - value / slope;
    if (moved === root || !Number.isFinite(moved) || moved < 0) break;
    root = moved;
  }
  const d = root * root - root * z + covXY;
  const x = (xz * (yy - root) - yz * xy) / d / 2;
  const y = (yz * (xx - root) - xz * xy) / d / 2;
  const radius = Math.sqrt(x * x + y * y + z);
  if (!Number.isFinite(radius)) return null;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    squares += (Math.hypot(east[i]! - meanX - x, north[i]! - meanY - y) - radius) ** 2;
  }
  return { airEast: meanX + x, airNorth: meanY + y, trueAirspeed: radius, rms: Math.sqrt(squares / n) };
}

/**
 * Airspeed and wind speed from the ground speeds of three headings 120 degrees apart, whatever the first; null where
 * no wind fits. Source: E. Williams, *Aviation Formulary* V1.47, "TAS and windspeed from three GPS speeds".
 */
export function fromThreeHeadings(
  groundSpeeds: readonly [Knots, Knots, Knots],
): { readonly trueAirspeed: Knots; readonly windSpeed: Knots } | null {
  const [a, b, c] = groundSpeeds;
  const vms = (a * a + b * b + c * c) / 3;
  const mu = groundSpeeds.reduce((sum, v) => sum + ((v * v) / vms - 1) ** 2, 0) / 6;
  if (!(mu <= 0.25)) return null;
  const bp = 0.5 + Math.sqrt(0.25 - mu);
  return { trueAirspeed: Math.sqrt(vms * bp), windSpeed: Math.sqrt((vms * mu) / bp) };
}
