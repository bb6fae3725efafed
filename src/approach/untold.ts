/** What of an approach cannot be told, and why: a fact's name and a reason's code each. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Track } from "../track/track.ts";
import type { WindFact } from "../wind/wind.ts";
import type { ApproachFacts } from "./facts.ts";
import { restsOnAssumedLength } from "./guidance.ts";
import type { HeightDatum } from "./height.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

type Untold = ApproachFacts["cannotTell"][number];

/** `heights`: whether the log has any. */
export function untoldOf(of: {
  readonly exercise: ApproachExercise;
  readonly rows: ApproachRows;
  readonly segments: Segments;
  readonly datum: HeightDatum;
  readonly heights: boolean;
  readonly heightsBy: Track["heightsBy"];
  readonly wind: WindFact | null;
}): Untold[] {
  const { exercise, rows, segments, datum, heights, heightsBy, wind } = of;
  const reasons: [is: boolean, fact: string, reason: string][] = [
    [!rows.timed, "segments", "no-times"],
    [restsOnAssumedLength(exercise), "needle", "runway-length-assumed"],
    [!heights, "height", "no-height"],
    [heights && Number.isNaN(exercise.runway.elevation), "heightAboveThreshold", "elevation-not-known"],
    [heights && datum.anchored === "log", "height", heightsBy ? "height-is-pressure" : "height-not-anchored"],
    [exercise.finalFix !== null && !segments.fix, "finalFixPassage", "fix-not-passed"],
    [segments.outcome === "missed" && !exercise.missedCourse, "missedTrack", "no-missed-course"],
    [
      wind?.knowledge !== "full",
      "windCorrection",
      wind?.knowledge === "along" ? "wind-along-only" : "wind-not-known",
    ],
  ];
  return reasons.filter(([is]) => is).map(([, fact, reason]) => ({ fact, reason }));
}
