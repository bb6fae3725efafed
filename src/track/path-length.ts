/** How far a track went over the ground, from point to point. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { distanceBetween } from "./bend.ts";
import { toCartesian } from "./cartesian.ts";
import { MEAN_RADIUS } from "./step.ts";
import type { Track } from "./track.ts";

/**
 * The sum of the steps within each segment, on the ellipsoid. Each is the arc over the chord between two points on the
 * mean sphere: of a step of 1 km a micrometre is left out, of one of 100 km a decimetre.
 */
export function pathLength(track: Track): NauticalMiles {
  const place = new Float64Array(6);
  let metres = 0;
  for (let i = 0; i < track.length; i++) {
    place.copyWithin(0, 3);
    toCartesian(track.latitude[i]!, track.longitude[i]!, place, 3);
    if (i === 0 || track.segment[i] !== track.segment[i - 1]) continue;
    metres += 2 * MEAN_RADIUS * Math.asin(distanceBetween(place, 0, 1) / (2 * MEAN_RADIUS));
  }
  return metres / METRES_PER_NAUTICAL_MILE;
}
