/** What a pilot can see of a course from where the aircraft is: distance, needle and side. */
import type { Position } from "../geodesy/position.ts";
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Metres, NauticalMiles, Seconds, Share, TrueDegrees } from "../quantity/units.ts";
import { NEEDLE_SCALES } from "../standard/needle.ts";
import type { CourseStep, HoldStep } from "./script.ts";
import { offset } from "./step.ts";

export interface Sight {
  /** From the fix of a radial, to the fix of any other course, miles; negative beyond the fix. */
  readonly distance: NauticalMiles;
  /** Right of course positive. */
  readonly across: Metres;
  /** Deviation over full scale, right of course positive (the needle goes the other way). */
  readonly needle: Share;
  /** False within a mile of a station, where the needle runs wild and a pilot leaves it alone. */
  readonly needleWatched: boolean;
  /** The direction of the course where the aircraft is. */
  readonly course: TrueDegrees;
  readonly time: Seconds;
}

/** A pilot leaves the needle alone this near to a station, miles. Common practice, no source. */
const NEEDLE_IGNORED_WITHIN = 1;

/** A function that looks at the course of a step. */
export function sightOf(
  step: Pick<CourseStep, "form" | "fix" | "fromFix" | "course" | "scale">,
): (at: Position, time: Seconds) => Sight {
  const leg = step.form === "leg" ? offset(step.fromFix!, step.fix) : null;
  const azimuth = leg ? leg.azimuthAtEnd : step.course!;
  const scale = NEEDLE_SCALES[step.scale];
  return (at, time) => {
    const r = offset(step.fix, at);
    const angle = turnFrom(azimuth, r.azimuthAtStart);
    const along = r.distance * cosDeg(angle);
    const across = r.distance * sinDeg(angle);
    const needle =
      scale.kind === "angular"
        ? (Math.atan2(across, Math.abs(along)) * DEGREES_PER_RADIAN) / scale.fullScaleDeg
        : across / METRES_PER_NAUTICAL_MILE / scale.fullScaleNm;
    return {
      distance: (step.form === "from" ? along : -along) / METRES_PER_NAUTICAL_MILE,
      across,
      needle,
      needleWatched: scale.kind === "linear" || r.distance > NEEDLE_IGNORED_WITHIN * METRES_PER_NAUTICAL_MILE,
      time,
      course: direction(azimuth),
    };
  };
}

/** A function that looks at the inbound course of a hold. */
export const sightOfHold = ({ fix, inbound }: Pick<HoldStep, "fix" | "inbound">) =>
  sightOf({ form: "to", fix, course: inbound, scale: "rnav-1" });
