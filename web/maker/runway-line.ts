/** A runway as a course and a length, as in "218T 2600": nothing is taken for the length, for the width of a localizer hangs on it. */
import { typedPlace } from "./values.ts";

const LINE = /^(\d{1,3}(?:[.,]\d+)?\s*°?\s*[TM]?)(?:\s*\/\s*|\s*,?\s+)(\d{3,5})\s*(?:ft)?$/i;
const COURSE = /^\d{1,3}([.,]\d+)?\s*°?\s*[TM]?$/i;

/** The course as written, and the length in feet; null where it is not both. */
export function typedRunwayLine(
  text: string,
): { readonly courseText: string; readonly lengthFt: number } | null {
  const [, courseText, length] = LINE.exec(text.trim()) ?? [];
  return courseText === undefined ? null : { courseText, lengthFt: Number(length) };
}

/** What is wrong with a far end as typed, in words. */
export function endComplaint(text: string): string | null {
  if (typedPlace(text) || typedRunwayLine(text)) return null;
  return COURSE.test(text.trim())
    ? "Write the length in feet after the course, as in 218T 2600: the width of a localizer hangs on it."
    : "Write latitude and longitude, or the runway’s course and length in feet, as in 218 2600 or 218T 2600.";
}
