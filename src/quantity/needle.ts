/** How a course needle answers: from a distance off course to a share of full scale, and back. */
import { tanDeg } from "./angle.ts";
import { DEGREES_PER_RADIAN } from "./factor.ts";
import type { AngleSize, NauticalMiles, Share } from "./units.ts";

/** What full deflection means: an angle at the station, or a distance from the course. */
export type FullScale =
  | { readonly kind: "angular"; readonly fullScaleDeg: AngleSize }
  | { readonly kind: "linear"; readonly fullScaleNm: NauticalMiles };

/**
 * Deviation as a share of full scale, right of course positive; may exceed 1. Angular: the angle at the station
 * between the course and the aircraft. `distance` is that to the station, of either sign.
 */
export function needleOf(scale: FullScale, across: NauticalMiles, distance: NauticalMiles): Share {
  if (scale.kind === "linear") return across / scale.fullScaleNm;
  return (Math.atan2(across, Math.abs(distance)) * DEGREES_PER_RADIAN) / scale.fullScaleDeg;
}

/** How far off course a needle stands at a share of full scale, NM: the inverse of `needleOf`. */
export function acrossAt(scale: FullScale, needle: Share, distance: NauticalMiles): NauticalMiles {
  if (scale.kind === "linear") return needle * scale.fullScaleNm;
  return Math.abs(distance) * tanDeg(needle * scale.fullScaleDeg);
}
