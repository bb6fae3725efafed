/** What of an approach could not be told, and why, as codes. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { WindFact } from "../wind/wind.ts";
import type { ApproachFacts } from "./facts.ts";
import { restsOnAssumedLength } from "./guidance.ts";
import type { HeightDatum } from "./height.ts";
import type { ApproachPath, ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

interface Told {
  readonly exercise: ApproachExercise;
  readonly rows: ApproachRows;
  readonly segments: Pick<Segments, "fix" | "final">;
  readonly datum: HeightDatum;
  readonly heightsBy: ApproachPath["heightsBy"];
  /** The log has heights. */
  readonly known: boolean;
  readonly outcome: Segments["outcome"];
  readonly wind: WindFact | null;
}

export function untold(told: Told): ApproachFacts["cannotTell"] {
  const { exercise, rows, segments, datum, heightsBy, known, outcome, wind } = told;
  return [
    ...(rows.timed ? [] : [{ fact: "segments", reason: "no-times" }]),
    ...(restsOnAssumedLength(exercise) ? [{ fact: "needle", reason: "runway-length-assumed" }] : []),
    ...(rows.judgedNeedle.subarray(segments.final.start, segments.final.end).every(Number.isNaN)
      ? [{ fact: "needle", reason: "all-near-station" }]
      : []),
    ...(known ? [] : [{ fact: "height", reason: "no-height" }]),
    ...(known && Number.isNaN(exercise.runway.elevation)
      ? [{ fact: "heightAboveThreshold", reason: "elevation-not-known" }]
      : []),
    ...(known && datum.anchored === "log"
      ? [{ fact: "height", reason: heightsBy ? "height-is-pressure" : "height-not-anchored" }]
      : []),
    ...(rows.timed && exercise.finalFix && !segments.fix
      ? [{ fact: "finalFixPassage", reason: "fix-not-passed" }]
      : []),
    ...(outcome === "missed" && !exercise.missedCourse
      ? [{ fact: "missedTrack", reason: "no-missed-course" }]
      : []),
    ...windReasons(wind),
  ];
}

function windReasons(wind: WindFact | null): ApproachFacts["cannotTell"] {
  if (wind?.knowledge === "full") return [];
  const reason = wind?.knowledge === "along" ? "wind-along-only" : "wind-not-known";
  return [{ fact: "windCorrection", reason }];
}
