/** What would have worked: the heading that holds the final in that wind, and the rate that fits its path. */
import type { ApproachExercise } from "../brief/brief.ts";
import { rateOn } from "../quantity/descent.ts";
import { magneticHeading } from "../quantity/magnetic.ts";
import { headingForCourse } from "../wind/index.ts";
import type { WindFact } from "../wind/wind.ts";
import type { ApproachAdvice, ApproachFacts } from "./facts.ts";

/** Null where neither the descent nor the wind is known. */
export function adviceFor(
  exercise: ApproachExercise,
  facts: ApproachFacts,
  wind: WindFact | null,
): ApproachAdvice {
  const angle = facts.glidePath?.angleDeg ?? exercise.glidePath?.angle ?? facts.descent?.constant?.angleDeg;
  if (angle === undefined || facts.groundSpeedKt === null) return null;
  const full = wind?.knowledge === "full" && wind.from !== null && wind.speed !== null && wind.trueAirspeed;
  const solved = full
    ? headingForCourse(exercise.course.azimuth, wind.trueAirspeed!, { from: wind.from!, speed: wind.speed! })
    : null;
  return {
    headingTrueDeg: solved?.heading ?? null,
    headingMagneticDeg: solved && magneticHeading(solved.heading, exercise.variation),
    windCorrectionDeg: solved?.correction ?? null,
    descentFpm: rateOn(angle, facts.groundSpeedKt),
    angleDeg: angle,
    visualDescentPointNm: facts.descent?.visualDescentPointNm ?? null,
  };
}
