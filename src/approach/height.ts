/** What the log's heights are worth: tied to the runway where the aircraft stood on it, else with the doubt they have. */
import type { Runway } from "../brief/brief.ts";
import { courseBetween, inverse, measureColumns } from "../geodesy/index.ts";
import { METRES_PER_FOOT, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Feet, NauticalMiles, Seconds, UtcMillis } from "../quantity/units.ts";
import { taxiSpeed } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";

/** One standard deviation of a GPS height, ft: 13 m at 95 %. GPS SPS Performance Standard 2020, 3.8.3, from memory. */
const HEIGHT_SD: Feet = 13 / 1.96 / METRES_PER_FOOT;
/** How long such an error lasts, s. Chosen: minutes, as ionosphere and satellites change. */
const HEIGHT_TIME: Seconds = 180;
/**
 * A log that says nothing of its datum may count from the ellipsoid: worldwide the geoid lies 30 m off it (rms; +65 to
 * -102 m, FAI IGC specification). Chosen: half of that in standard deviation, since most receivers count from the geoid.
 */
const DATUM_SD: Feet = 15 / METRES_PER_FOOT;
/** The runway's elevation at the threshold against where the aircraft rolled, and against elsewhere on the field. Chosen: a third and one whole of the 1 % slope over 2,500 ft. */
const SLOPE_SD: Feet = 8;
const FIELD_SD: Feet = 25;
/** Rolled on the runway: this near to its centre line; on its field: this near to the threshold. */
const BESIDE: NauticalMiles = 0.08;
const FIELD: NauticalMiles = 2.5;
/** Heights of this long about the nearest moment are averaged. */
const AVERAGED: Seconds = 60;

export interface HeightDatum {
  /** `runway`: tied where the aircraft rolled on this runway; `field`: on its field; `log`: as logged. */
  readonly anchored: "runway" | "field" | "log";
  /** To be added to the logged height. */
  readonly correction: Feet;
  /** One standard deviation of the corrected height at a time. */
  sdAt(time: UtcMillis): Feet;
}

/** `about`: when the approach was flown; rows on the ground nearest to that are taken. */
export function heightDatum(motion: Motion, runway: Runway, about: UtcMillis): HeightDatum {
  const slow = taxiSpeed(motion);
  const line = courseBetween(runway.threshold, runway.end);
  const { along, across } = measureColumns(line, motion.latitude, motion.longitude);
  const length = inverse(runway.threshold, runway.end).distance;
  const grounded = (i: number): "runway" | "field" | null => {
    if (!(motion.groundSpeed[i]! < slow) || Number.isNaN(motion.altitude[i]!)) return null;
    const beside = Math.abs(nauticalMilesFromMetres(across[i]!));
    if (beside < BESIDE && along[i]! > -100 && along[i]! < length + 100) return "runway";
    return Math.hypot(beside, nauticalMilesFromMetres(along[i]!)) < FIELD ? "field" : null;
  };
  for (const anchored of ["runway", "field"] as const) {
    let nearest = -1;
    for (let i = 0; i < motion.length; i++) {
      if (grounded(i) !== anchored) continue;
      if (nearest < 0 || Math.abs(motion.time[i]! - about) < Math.abs(motion.time[nearest]! - about))
        nearest = i;
    }
    if (nearest < 0) continue;
    const at = motion.time[nearest]!;
    let [sum, n] = [0, 0];
    for (let i = 0; i < motion.length; i++) {
      if (Math.abs(motion.time[i]! - at) > AVERAGED * 1000 || grounded(i) !== anchored) continue;
      sum += motion.altitude[i]!;
      n++;
    }
    const slope = anchored === "runway" ? SLOPE_SD : FIELD_SD;
    return {
      anchored,
      correction: runway.elevation - sum / n,
      sdAt: (time) => {
        // the error at both moments, as far as it has changed between them (Gauss-Markov)
        const kept = Math.exp(-Math.abs(time - at) / 1000 / HEIGHT_TIME);
        return Math.hypot(slope, HEIGHT_SD * Math.sqrt(2 * (1 - kept)));
      },
    };
  }
  return { anchored: "log", correction: 0, sdAt: () => Math.hypot(HEIGHT_SD, DATUM_SD) };
}
