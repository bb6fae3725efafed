/** What may be said of a wind, given its doubt: direction and speed, the part along the track, or nothing. */

import type { Knots } from "../quantity/units.ts";
import { principalAxes, varianceAlong } from "./ellipse.ts";
import type { WindKnowledge } from "./wind.ts";

/**
 * Direction and speed are said only where the worse axis of the doubt has a standard deviation below this, kt. Chosen:
 * doubts come out a fifth wider than the errors in usual air, so that the median error stays below 3 kt, and the ellipse
 * holds 0.89 and more of the winds claimed in all simulated air.
 */
export const FULL_LIMIT = 3;
/** The same where a wind was stated or air data were recorded: nothing has to be guessed from the motion there. Chosen: what the instruments of a light aircraft give, with room for the wind's wander. */
export const TOLD_LIMIT = 4;
/** The part along the track is said only below this, kt: a stated airspeed is seldom better than 5 kt, and the unknown drift adds to it. */
const ALONG_LIMIT = 7;

/** `trackEast`, `trackNorth`: unit vector of the track; zeros where there is no one track. */
export function knowledgeOf(
  varianceEast: number,
  varianceNorth: number,
  covariance: number,
  trackEast: number,
  trackNorth: number,
  fullLimit: Knots,
): WindKnowledge {
  if (principalAxes(varianceEast, varianceNorth, covariance).major < fullLimit) return "full";
  if (trackEast === 0 && trackNorth === 0) return "none";
  const along = Math.sqrt(varianceAlong(varianceEast, varianceNorth, covariance, trackEast, trackNorth));
  return along < ALONG_LIMIT ? "along" : "none";
}
