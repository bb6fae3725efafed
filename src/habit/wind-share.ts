/** How much of a needed wind correction was missing: the same figure of courses and of the ways outbound of holds. */
import type { AngleSize, TurnDegrees } from "../quantity/units.ts";
import type { Measured, WhyUntold } from "./tendency.ts";

/** Half of the needed correction may be in doubt, no more. Chosen: with more, the share is the doubt's and not the pilot's. */
const MOST_DOUBT = 0.5;

/** 1 = a third of the needed correction. Chosen: on 12 degrees of it 4, which is what a pilot calls one small correction (5 degrees, common practice). */
export const A_THIRD = 1 / 3;

/** Why a share would tell nothing: the wind is not known, or not well enough, or no more than `least` was needed; null where it tells. */
export function whyNoShare(
  needed: TurnDegrees | null,
  doubt95: AngleSize | null,
  least: AngleSize,
): WhyUntold | null {
  if (needed === null || doubt95 === null) return "wind-not-known";
  const size = Math.abs(needed);
  if (!(size >= least)) return "little-wind";
  return doubt95 <= MOST_DOUBT * size ? null : "wind-not-known";
}

/**
 * 1 less what was flown over what was needed: 0 right, 1 none, negative too much. Null where no more than `least` was
 * needed, where a share is only noise, or where the doubt is too large.
 */
export function missingShare(
  flown: TurnDegrees,
  needed: TurnDegrees,
  doubt95: AngleSize,
  least: AngleSize,
): Measured | null {
  if (whyNoShare(needed, doubt95, least) !== null) return null;
  return { value: 1 - flown / needed, doubt95: doubt95 / Math.abs(needed) };
}
