/** The lead as it truly was: from when the true track passed the threshold for good to the correction. */

import { cosDeg, directionOf, sinDeg, turnFrom } from "../../src/quantity/angle.ts";
import type { TrueColumns } from "../../src/simulator/index.ts";

/** Track less line of the true flight at a second, degrees right. `line`: its direction there. */
export const trueError =
  ({ heading, trueAirspeed, airEast, airNorth }: TrueColumns, line: (second: number) => number) =>
  (i: number): number =>
    turnFrom(
      line(i),
      directionOf(
        trueAirspeed[i]! * sinDeg(heading[i]!) + airEast[i]!,
        trueAirspeed[i]! * cosDeg(heading[i]!) + airNorth[i]!,
      ),
    );

/** The track is off from here, degrees, as the facts count it. */
export const TRACK_OFF = 3;
/** Wander may have turned the track off already when the heading is let go, seconds. */
const BEFORE = 30;

/**
 * The second at which the true track passed the threshold for good: first there, about when the heading was let go, and
 * its mean from there on never back under it until the correction. `error`: track less the line, degrees, at a second. `earliest`:
 * the turn onto the line has ended.
 */
export function trueTrackOff(
  error: (second: number) => number,
  letGo: number,
  corrected: number,
  earliest = 0,
): number {
  const side = Math.sign(error(corrected));
  const forGood = (from: number) => {
    let sum = 0;
    for (let i = from; i <= corrected; i++) {
      sum += error(i) * side;
      if (sum < TRACK_OFF * (i - from + 1)) return false;
    }
    return true;
  };
  let at = Math.max(earliest, letGo - BEFORE);
  while (at < corrected && !forGood(at)) at++;
  return at;
}
