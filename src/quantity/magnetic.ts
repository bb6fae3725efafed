/** Magnetic directions for the words: courses, radials and tracks by their exercise's variation, headings by the day's. */
import { z } from "zod";
import { magneticFromTrue } from "./angle.ts";
import type { MagneticDegrees, TrueDegrees, VariationDegrees } from "./units.ts";

/**
 * The variation of an exercise, degrees east. `degrees`: of its courses and radials, the declination of the station
 * where the brief gives one; 0 where `from` is "unknown". `model`: as in "WMM2025", null unless from the model.
 * `dayDegrees`: of the day at its place, which a compass shows: by the model, or that of the courses on a day that no
 * model covers; null where neither is known. Missing in documents of earlier versions.
 */
export const variationSchema = z.strictObject({
  degrees: z.number(),
  from: z.enum(["station", "model", "written-true", "unknown"]),
  model: z.string().nullable(),
  dayDegrees: z.number().nullable().optional(),
});
export type VariationUsed = Readonly<z.infer<typeof variationSchema>>;

export const UNKNOWN_VARIATION: VariationUsed = {
  degrees: 0,
  from: "unknown",
  model: null,
  dayDegrees: null,
};

/** A course, a radial, or a track that is held against one; null where no variation is known. */
export function magneticCourse(course: TrueDegrees, variation = UNKNOWN_VARIATION): MagneticDegrees | null {
  const { degrees, from } = variation;
  return from === "unknown" ? null : magneticFromTrue(course, degrees);
}

/** The variation that a compass has there, east positive; null where none is known. */
export function compassVariation(variation = UNKNOWN_VARIATION): VariationDegrees | null {
  const { degrees, from, dayDegrees } = variation;
  if (dayDegrees !== undefined) return dayDegrees;
  return from === "unknown" ? null : degrees;
}

/** What the compass shows on a heading; null where no variation is known. */
export function magneticHeading(heading: TrueDegrees, variation = UNKNOWN_VARIATION): MagneticDegrees | null {
  const east = compassVariation(variation);
  return east === null ? null : magneticFromTrue(heading, east);
}
