/** Magnetic directions in words: courses as the station has them, headings as the compass shows them, and how the two differ. */
import { turnFrom } from "../../quantity/angle.ts";
import {
  compassVariation,
  magneticCourse,
  magneticHeading,
  type VariationUsed,
} from "../../quantity/magnetic.ts";
import type { AngleSize } from "../../quantity/units.ts";
import { flownDirection } from "./number.ts";

/** A station is told apart from the compass from this on: a heading and a course in whole degrees no longer differ by the correction. */
const APART: AngleSize = 1;

/** As in "2.3°E". */
export const variationText = (degrees: number): string =>
  `${Math.abs(degrees).toFixed(1)}°${degrees < 0 ? "W" : "E"}`;

/** A heading as the compass shows it on that day, else true. */
export const flownHeading = (trueDeg: number, variation: VariationUsed | undefined): string =>
  flownDirection(trueDeg, magneticHeading(trueDeg, variation));

/** A course, a radial or a track as the chart has it, else true. */
export const flownCourse = (trueDeg: number, variation: VariationUsed | undefined): string =>
  flownDirection(trueDeg, magneticCourse(trueDeg, variation));

/** Said where headings stand beside courses; empty where the two agree. */
export function compassNote(variation: VariationUsed | undefined): string {
  const [east, degrees] = [compassVariation(variation), variation?.degrees ?? 0];
  if (east === null || Math.abs(turnFrom(east, degrees)) < APART) return "";
  return ` Headings are by the compass, with the variation of the day, ${variationText(east)}; courses by the station’s declination, ${variationText(degrees)}.`;
}
