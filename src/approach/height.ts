/** What the log's heights are worth: tied to the runway where the aircraft stood on it, else with the doubt they have. */

import type { Runway } from "../brief/brief.ts";
import { courseBetween, courseRuler, inverse, type Position } from "../geodesy/index.ts";
import { cosDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_FOOT, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type {
  Feet,
  FeetMsl,
  FeetPerMinute,
  Metres,
  NauticalMiles,
  Seconds,
  UtcMillis,
} from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { PRESSURE_HEIGHT_95, RECEIVER_HEIGHT_95, taxiSpeed } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { Track } from "../track/track.ts";

/** One standard deviation of a GPS height. */
const HEIGHT_SD: Feet = RECEIVER_HEIGHT_95 / Z95;
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
/** Fast as well it rolled there, before it was slow or after, while it climbed or sank no faster and no row was missing for so long. Chosen: above what the slope of a runway makes, under any flare. */
const LEVEL: FeetPerMinute = 100;
const UNBROKEN: Seconds = 6;
/** Before and past the ends of the runway so much still is on it. Chosen: as a threshold may be displaced, or given loosely. */
const ROUNDING: Metres = 100;
/** Heights so long before and after that moment are averaged: longer, and the error has changed. Tuned on simulation seeds 1-150. */
const AVERAGED: Seconds = 10;

export interface HeightDatum {
  /** `runway`: tied where the aircraft rolled on this runway; `field`: on its field; `log`: as logged. */
  readonly anchored: "runway" | "field" | "log";
  /** To be added to the logged height. */
  readonly correction: Feet;
  /** Of the threshold: as given, else as the log has it where the aircraft rolled on the runway; NaN where neither is known. */
  readonly elevation: FeetMsl;
  /** One standard deviation of the corrected height at a time. */
  sdAt(time: UtcMillis): Feet;
}

/** As logged: of an unknown datum, or on 1013.25 hPa with the setting of the day not known. */
export const untied = (elevation: FeetMsl, heightsBy?: Track["heightsBy"]): HeightDatum => ({
  anchored: "log",
  correction: 0,
  elevation,
  sdAt: () => (heightsBy === "pressure" ? PRESSURE_HEIGHT_95 / Z95 : Math.hypot(HEIGHT_SD, DATUM_SD)),
});

/** A row on the ground near the runway. */
interface Grounded {
  readonly row: number;
  readonly on: "runway" | "field";
}

/** Rows that stood or rolled on the runway or its field, in no order. */
function groundedRows(motion: Motion, runway: Runway): Grounded[] {
  const slow = taxiSpeed(motion);
  const ruler = courseRuler(courseBetween(runway.threshold, runway.end));
  const length = inverse(runway.threshold, runway.end).distance;
  const { latitude, longitude } = runway.threshold;
  const high = (FIELD + nauticalMilesFromMetres(length)) / 60; // degrees: a box that holds the field
  const wide = high / Math.max(0.02, cosDeg(latitude));
  const isSlow = (row: number) => motion.groundSpeed[row]! < slow;
  const placeOf = (row: number): Grounded["on"] | null => {
    if (Number.isNaN(motion.altitude[row]!)) return null;
    ruler.measure(motion.latitude[row]!, motion.longitude[row]!);
    const { along, across } = ruler;
    const beside = Math.abs(nauticalMilesFromMetres(across));
    if (beside < BESIDE && along > -ROUNDING && along < length + ROUNDING) return "runway";
    return Math.hypot(beside, nauticalMilesFromMetres(along)) < FIELD ? "field" : null;
  };
  const found: Grounded[] = [];
  /** The fast part of a roll beside a slow row. */
  const roll = (slowRow: number, way: 1 | -1) => {
    for (let row = slowRow + way; row >= 0 && row < motion.length && !isSlow(row); row += way) {
      const unbroken = Math.abs(motion.time[row]! - motion.time[row - way]!) <= UNBROKEN * 1000;
      if (!unbroken || !(Math.abs(motion.verticalSpeed[row]!) < LEVEL) || placeOf(row) !== "runway") return;
      found.push({ row, on: "runway" });
    }
  };
  for (let row = 0; row < motion.length; row++) {
    if (!isSlow(row)) continue;
    if (!(Math.abs(motion.latitude[row]! - latitude) < high)) continue;
    if (!(Math.abs(turnFrom(longitude, motion.longitude[row]!)) < wide)) continue;
    const on = placeOf(row);
    if (on) found.push({ row, on });
    if (on !== "runway") continue;
    roll(row, -1);
    roll(row, 1);
  }
  return found;
}

/** When the flight was nearest to a place. */
function nearestTime(motion: Motion, { start, end }: Span, { latitude, longitude }: Position): UtcMillis {
  let [nearest, least] = [end - 1, Number.POSITIVE_INFINITY];
  for (let row = start; row < end; row++) {
    const east = turnFrom(longitude, motion.longitude[row]!) * cosDeg(latitude);
    const away = Math.hypot(east, motion.latitude[row]! - latitude);
    if (away < least) [nearest, least] = [row, away];
  }
  return motion.time[nearest]!;
}

/** `span`: rows in which the approach was flown. Of those on the ground the ones nearest in time to its threshold count: the error has changed least. */
export function heightDatum(
  motion: Motion,
  runway: Runway,
  span: Span,
  heightsBy?: Track["heightsBy"],
): HeightDatum {
  const about = nearestTime(motion, span, runway.threshold);
  const grounded = groundedRows(motion, runway);
  const given = !Number.isNaN(runway.elevation);
  for (const anchored of ["runway", "field"] as const) {
    if (anchored === "field" && !given) break; // the field may lie higher or lower than its runway
    const rows = grounded.filter(({ on }) => on === anchored).map(({ row }) => row);
    if (rows.length === 0) continue;
    const away = (row: number) => Math.abs(motion.time[row]! - about);
    const at = motion.time[rows.reduce((a, b) => (away(b) < away(a) ? b : a))]!;
    const near = rows.filter((row) => Math.abs(motion.time[row]! - at) <= AVERAGED * 1000);
    const mean = near.reduce((sum, row) => sum + motion.altitude[row]!, 0) / near.length;
    const slope = anchored === "runway" ? SLOPE_SD : FIELD_SD;
    return {
      anchored,
      correction: given ? runway.elevation - mean : 0,
      elevation: given ? runway.elevation : mean,
      sdAt: (time) => {
        // the error at both moments, as far as it has changed between them (Gauss-Markov)
        const kept = Math.exp(-Math.abs(time - at) / 1000 / HEIGHT_TIME);
        return Math.hypot(slope, HEIGHT_SD * Math.sqrt(2 * (1 - kept)));
      },
    };
  }
  return untied(runway.elevation, heightsBy);
}
