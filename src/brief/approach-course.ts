/** The courses of an approach of a brief, magnetic or true as written: the final's, and that of the climb after a missed approach. */
import { alongAcrossExact, courseBetween, courseThrough, positionOn } from "../geodesy/index.ts";
import { direction, trueFromMagnetic } from "../quantity/angle.ts";
import type { Issue } from "../quantity/issue.ts";
import { magneticCourse, UNKNOWN_VARIATION, type VariationUsed } from "../quantity/magnetic.ts";
import type { UtcMillis } from "../quantity/units.ts";
import type { ApproachExercise, Fix } from "./brief.ts";
import type { WrittenDirection } from "./direction.ts";
import type { DraftApproach } from "./draft.ts";
import { variationOf, writtenTrue } from "./variation.ts";

/**
 * The final course with its origin at the threshold, or abeam it: along the runway, from one end to the other; or as
 * written, through the station, else through the threshold. A magnetic course takes the station's declination, else
 * the model's variation there; null where there is none.
 */
export function resolveApproach(
  drafted: DraftApproach,
  time: UtcMillis | null,
  issues: Issue[],
): Omit<ApproachExercise, "index" | "title" | "between" | "altitude"> | null {
  const { title: _, between: __, altitude: ___, where, course: written, missedCourse, ...asked } = drafted;
  const { threshold, end, elevation } = asked.runway;
  const from: Fix = asked.guidance.station ?? {
    ...threshold,
    ident: asked.runway.ident ?? "",
    kind: "runway",
    declination: null,
    elevation,
  };
  const { used, issues: doubts } = variationOf(from, time, where);
  const known = used ?? UNKNOWN_VARIATION;
  const magnetically = [written, missedCourse].some((course) => course?.reference === "magnetic");
  if (magnetically && !used) return null;
  if (magnetically) issues.push(...doubts);
  const trueOf = ({ degrees, reference }: WrittenDirection) =>
    reference === "true" ? degrees : trueFromMagnetic(degrees, used!.degrees);
  const approach = { ...asked, missedCourse: missedCourse && climbCourse(missedCourse, trueOf, known) };
  if (written === null) {
    const { azimuth } = courseBetween(threshold, end);
    const course = courseThrough(threshold, azimuth);
    return { ...approach, course, magnetic: magneticCourse(azimuth, known), variation: known };
  }
  const line = courseThrough(from, trueOf(written));
  const foot = positionOn(line, alongAcrossExact(line, threshold).along);
  const course = courseThrough(foot, direction(foot.course));
  return {
    ...approach,
    course,
    magnetic: written.reference === "magnetic" ? written.degrees : magneticCourse(course.azimuth, known),
    variation: written.reference === "true" ? writtenTrue(used) : known,
  };
}

function climbCourse(
  written: WrittenDirection,
  trueOf: (written: WrittenDirection) => number,
  variation: VariationUsed,
): ApproachExercise["missedCourse"] {
  const azimuth = trueOf(written);
  const magnetic = written.reference === "magnetic" ? written.degrees : magneticCourse(azimuth, variation);
  return { azimuth, magnetic };
}
