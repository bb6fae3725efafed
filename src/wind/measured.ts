/** Airspeed and heading that the log itself recorded, which make the wind measured rather than estimated. */

import { variationAt } from "../geodesy/index.ts";
import { direction } from "../quantity/angle.ts";
import type { Knots, TrueDegrees } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { Column, Track } from "../track/track.ts";
import { trueOverEquivalent } from "./atmosphere.ts";

/** At the rows of the motion; NaN where not recorded. */
export interface MeasuredAir {
  readonly trueAirspeed: Column<Knots>;
  readonly heading: Column<TrueDegrees>;
}

/** Standard errors of recorded airspeed, kt, and heading, degrees, of light aircraft: mostly the same all flight. From memory of calibration sheets, no source. */
export const AIRSPEED_ERROR = 2.5;
export const HEADING_ERROR = 1.5;

/**
 * The recorded air data of a log at the rows of its motion; null where it has no airspeed or no heading.
 *
 * True airspeed as recorded, else from the indicated one by the standard atmosphere at the pressure altitude, or the
 * log's own height where it has none (position error and compressibility are left out: under 1 kt below 150 kt and
 * 10,000 ft). True heading as recorded, else the magnetic one with the model's variation at the start of the log.
 */
export function measuredAir(track: Track, motion: Motion): MeasuredAir | null {
  const { trueAirspeed, indicatedAirspeed, headingTrue, headingMagnetic } = track;
  if (!(trueAirspeed || indicatedAirspeed) || !(headingTrue || headingMagnetic)) return null;
  const start = { latitude: motion.latitude[0]!, longitude: motion.longitude[0]! };
  const variation = headingTrue ? 0 : (variationAt(start, motion.time[0]!)?.degrees ?? Number.NaN);
  const speed = new Float64Array(motion.length).fill(Number.NaN);
  const heading = new Float64Array(motion.length).fill(Number.NaN);
  let known = 0;
  for (let k = 0, row = 0; k < motion.length; k++) {
    while (row < track.length && !(track.time[row]! >= motion.time[k]!)) row++;
    if (row >= track.length || track.time[row] !== motion.time[k]) continue;
    const height = track.pressureAltitude?.[row] ?? motion.altitude[k]!;
    const indicated = indicatedAirspeed ? indicatedAirspeed[row]! * trueOverEquivalent(height) : Number.NaN;
    const recorded = trueAirspeed?.[row] ?? Number.NaN;
    speed[k] = Number.isNaN(recorded) ? indicated : recorded;
    const nose = headingTrue?.[row] ?? (headingMagnetic?.[row] ?? Number.NaN) + variation;
    heading[k] = Number.isNaN(nose) ? nose : direction(nose);
    if (!Number.isNaN(speed[k]! + heading[k]!)) known++;
  }
  return known > 0 ? { trueAirspeed: speed, heading } : null;
}
