/** Whether at the fix of a hold that was not found another one was flown: on another inbound course, maybe with turns to the other side. */
import type { HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import type { FoundHold } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import type { Motion } from "../track/motion.ts";
import { OVER_FIX } from "./fix-passes.ts";

/** The finding, of the one with the most laps that was held at the fix, within the doubt of where it was held; `beside`: the holds found that are none of the brief's. */
export function heldOtherwise(
  { fix, course, turns, between, variation }: HoldExercise,
  beside: readonly FoundHold[],
  { time }: Motion,
): Finding | null {
  const [other] = beside
    .filter(
      (hold) => nauticalMilesFromMetres(inverse(fix, hold.fix).distance) <= Math.hypot(OVER_FIX, hold.fix95),
    )
    .filter(
      ({ span }) => !between || (time[span.end - 1]! >= between.start && time[span.start]! <= between.end),
    )
    .sort((a, b) => b.laps.length - a.laps.length);
  if (!other) return null;
  return {
    code: "held-otherwise",
    facts: {
      laps: other.laps.length,
      courseTrueDeg: other.inbound,
      courseMagneticDeg: magneticCourse(other.inbound, variation),
      doubt95Deg: other.inbound95,
      offDeg: turnFrom(course.azimuth, other.inbound),
      turns: other.turns,
      otherSide: other.turns !== turns,
    },
    evidence: { fromUtc: utcText(time[other.span.start]!), toUtc: utcText(time[other.span.end - 1]!) },
  };
}
