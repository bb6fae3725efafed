/** What may be said of a wind, given its doubt: direction and speed, the part along the track, or nothing. */
import { principalAxes, varianceAlong } from "./ellipse.ts";
import type { WindKnowledge } from "./wind.ts";

/** Direction and speed are said only where the worse axis of the doubt has a standard deviation below this, kt. Tuned on simulated flights. */
export const FULL_LIMIT = 2.8;
/** The part along the track is said only below this, kt: a stated airspeed is seldom better than 5 kt, and the unknown drift adds to it. */
export const ALONG_LIMIT = 7;

/** `trackEast`, `trackNorth`: unit vector of the track; zeros where there is no one track. */
export function knowledgeOf(
  varianceEast: number,
  varianceNorth: number,
  covariance: number,
  trackEast: number,
  trackNorth: number,
): WindKnowledge {
  if (principalAxes(varianceEast, varianceNorth, covariance).major < FULL_LIMIT) return "full";
  if (trackEast === 0 && trackNorth === 0) return "none";
  const along = Math.sqrt(varianceAlong(varianceEast, varianceNorth, covariance, trackEast, trackNorth));
  return along < ALONG_LIMIT ? "along" : "none";
}
