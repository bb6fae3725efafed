/** How far the 95 % doubt of a wind reaches: the directions and speeds that its oval spans, seen from calm. */

import type { WindRecord } from "../debrief/document.ts";
import { RADIANS_PER_DEGREE } from "../quantity/factor.ts";

export interface WindReach {
  /**
   * Direction the wind comes from, true degrees, with the bounds of its doubt as degrees that may leave 0 to 360 so
   * that `low <= from <= high` always holds. Null where the oval holds calm: such a wind may come from anywhere.
   */
  readonly direction: { readonly from: number; readonly low: number; readonly high: number } | null;
  /** Speed, kt, with its bounds; never below calm. */
  readonly speed: { readonly kt: number; readonly low: number; readonly high: number };
}

/** An axis thinner than this, kt, is a line; it keeps the division below defined. */
const THIN_KT = 1e-6;

/**
 * The span of a wind that is fully known, else null.
 *
 * The bounds of direction are the two tangents from calm to the 95 % ellipse: made a unit circle by its axes, with its
 * middle at distance d, it fills the half-angle asin(1 / d). Those of speed are the ellipse's shadow on the line of
 * the wind. As the ellipse holds both components at 95 %, each bound alone holds somewhat more than that.
 */
export function windReach(wind: WindRecord): WindReach | null {
  if (wind.knowledge !== "full" || wind.fromTrueDeg === null || wind.speedKt === null) return null;
  const { fromTrueDeg: from, speedKt: kt, ellipse95Kt: ellipse } = wind;
  if (ellipse === null)
    return { direction: { from, low: from, high: from }, speed: { kt, low: kt, high: kt } };
  const major = Math.max(THIN_KT, ellipse.majorKt);
  const minor = Math.max(THIN_KT, ellipse.minorKt);
  // of the wind in the frame of the ellipse: first along its long axis, then 90° to the right of it
  const off = (from - ellipse.majorTrueDeg) * RADIANS_PER_DEGREE;
  const half = Math.hypot(major * Math.cos(off), minor * Math.sin(off));
  const speed = { kt, low: Math.max(0, kt - half), high: kt + half };
  const [u, v] = [(kt * Math.cos(off)) / major, (kt * Math.sin(off)) / minor];
  const distance = Math.hypot(u, v);
  if (distance <= 1) return { direction: null, speed };
  const middle = Math.atan2(v, u);
  const open = Math.asin(1 / distance);
  const tangent = (side: -1 | 1): number => {
    const angle = middle + side * open;
    const seen = Math.atan2(minor * Math.sin(angle), major * Math.cos(angle));
    return from + turned((seen - off) / RADIANS_PER_DEGREE);
  };
  return { direction: { from, low: tangent(-1), high: tangent(1) }, speed };
}

/** Into -180 to 180. */
const turned = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
