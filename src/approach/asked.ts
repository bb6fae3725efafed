/** What was to be flown: the runway, the final course and its guidance, the final fix, and the line as it is drawn. */
import type { ApproachExercise } from "../brief/brief.ts";
import { inverse, positionOn } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { feetFromMetres, metresFromNauticalMiles } from "../quantity/factor.ts";
import type { ApproachFacts } from "./facts.ts";
import { fullScaleAt, type NeedleGuide, onFinal } from "./guidance.ts";
import type { ApproachRows } from "./rows.ts";

type Asked = Pick<
  ApproachFacts,
  "runway" | "finalCourseTrueDeg" | "finalCourseMagneticDeg" | "variation" | "guidance" | "finalFix" | "line"
>;

const at = ({ latitude, longitude }: Position): [number, number] => [latitude, longitude];

export function askedFacts(exercise: ApproachExercise, guide: NeedleGuide, rows: ApproachRows): Asked {
  const { runway } = exercise;
  const along = inverse(runway.threshold, runway.end);
  const fixDistance = exercise.finalFix && onFinal(exercise, exercise.finalFix).before;
  return {
    runway: {
      ident: runway.ident,
      threshold: at(runway.threshold),
      end: at(runway.end),
      elevationFt: Number.isFinite(runway.elevation) ? runway.elevation : null,
      lengthFt: feetFromMetres(along.distance),
      courseTrueDeg: along.azimuthAtStart,
    },
    finalCourseTrueDeg: exercise.course.azimuth,
    finalCourseMagneticDeg: exercise.magnetic,
    variation: { ...exercise.variation },
    guidance: {
      kind: guide.kind,
      label: guide.label,
      citation: guide.citation,
      supposed: guide.supposed,
      halfAngleDeg: guide.halfAngle,
      fullScaleAtThresholdNm: fullScaleAt(guide, 0),
    },
    finalFix:
      exercise.finalFix && fixDistance !== null
        ? { ident: exercise.finalFix.ident, distanceNm: fixDistance, altitudeFt: exercise.finalFixAltitude }
        : null,
    line: {
      start: at(positionOn(exercise.course, metresFromNauticalMiles(Math.min(0, rows.alongNm[0]!)))),
      end: at(exercise.course.origin),
    },
  };
}
