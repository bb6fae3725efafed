/** The magnetic variation at a place and time, by the World Magnetic Model of that time. */
import geomagnetism, { type GeomagnetismModel } from "geomagnetism";
import { UNKNOWN_VARIATION, type VariationUsed } from "../quantity/magnetic.ts";
import { DAY_MS } from "../quantity/time.ts";
import type { UtcMillis, VariationDegrees } from "../quantity/units.ts";
import { requirePosition } from "./earth.ts";
import type { Position } from "./position.ts";

export interface Variation {
  readonly degrees: VariationDegrees;
  /** As in "WMM2025". */
  readonly model: string;
}

/**
 * The date that stands in for what has none, a log without times or a list of points: the middle of the years that the
 * World Magnetic Model 2025 is made for (2025.0 to 2030.0; NOAA NCEI, *The US/UK World Magnetic Model for 2025-2030*).
 * Away from the magnetic poles variation changes by at most about 0.2° a year, so inside those years this is within 0.5°.
 */
export const UNDATED: UtcMillis = Date.UTC(2027, 6, 1);

/** The model last used, with its day: it costs more to set up than to ask. */
let last: { readonly day: number; readonly model: GeomagnetismModel } | null = null;

/**
 * Variation at mean sea level, east positive; null where no model covers the time (before 15 December 2014 or after
 * 13 November 2029 with the data at hand).
 *
 * Source: NOAA/NCEI and BGS, World Magnetic Model 2015, 2015v2, 2020, 2025, by the package `geomagnetism`; of two
 * models that cover a time, the newer. Height is left out: by the model itself 5 km of it change the variation by less
 * than 0.1 degrees between 60 S and 60 N. The model's own error is a few tenths of a degree, more near the magnetic
 * poles (from memory).
 */
export function variationAt(position: Position, time: UtcMillis): Variation | null {
  requirePosition("position", position);
  if (!Number.isFinite(time)) throw new RangeError(`invalid time: ${time}`);
  const model = modelAt(time);
  if (model === null) return null;
  return {
    degrees: model.point([position.latitude, position.longitude]).decl,
    model: model.name.replace(/^WMM-?/i, "WMM"),
  };
}

/** The same for courses at a place and for headings there. */
export function modelVariation(position: Position, time: UtcMillis): VariationUsed {
  const found = variationAt(position, time);
  return found ? { ...found, from: "model", dayDegrees: found.degrees } : UNKNOWN_VARIATION;
}

function modelAt(time: UtcMillis): GeomagnetismModel | null {
  // The time itself, not its day, decides at the ends of the windows.
  if (last !== null && time >= +last.model.start_date && time <= +last.model.end_date) {
    if (
      Math.floor(time / DAY_MS) === last.day &&
      Math.floor(time / DAY_MS) !== Math.floor(+last.model.start_date / DAY_MS)
    ) {
      return last.model;
    }
  }
  try {
    const model = geomagnetism.model(new Date(time));
    last = { day: Math.floor(time / DAY_MS), model };
    return model;
  } catch {
    return null; // outside every window: the package throws
  }
}
