/** Each exercise of the brief, or each straight where there is no brief, as it stands in the document. */
import type { Brief, Exercise } from "../brief/brief.ts";
import { fitCourses, measureArc, measureCourse, measureDescent } from "../course/index.ts";
import { gradeCourse } from "../grade/index.ts";
import { type Match, matchExercises } from "../match/index.ts";
import { utcText } from "../quantity/time.ts";
import type { TestStandard } from "../standard/tolerance.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { DocumentExercise } from "./document.ts";
import type { ExerciseSeries, PathSeries } from "./series.ts";

/** When an exercise was flown: as matched, or where a line was fitted. */
type Found = Omit<Match, "by"> & { readonly by: Match["by"] | "fitted" };

/** The flight as the exercises are measured on it. */
export interface Flight {
  readonly path: PathSeries;
  readonly motion: Motion | null;
  readonly legs: readonly Leg[];
  readonly wind: WindEstimate | null;
  /** What the exercises are held against, or null. */
  readonly standard: TestStandard | null;
}

export interface ExerciseResult {
  readonly record: DocumentExercise;
  readonly series: ExerciseSeries | null;
}

const columnsOf = ({ path, motion }: Flight) => ({
  time: motion ? path.timeMs : null,
  latitude: path.latitude,
  longitude: path.longitude,
  altitude: path.altitudeFt,
});

function result(
  exercise: Exercise,
  match: Found,
  source: "brief" | "fitted",
  flight: Flight,
): ExerciseResult {
  const { span } = match;
  const { motion } = flight;
  const told = {
    title: exercise.title,
    source,
    startUtc: span && motion ? utcText(motion.time[span.start]!) : null,
    endUtc: span && motion ? utcText(motion.time[span.end - 1]!) : null,
    match: span ? { by: match.by, confidence: match.confidence } : null,
  };
  const { standard } = flight;
  const given = span && { path: columnsOf(flight), span, motion, wind: flight.wind };
  switch (exercise.kind) {
    case "course": {
      const { kind } = exercise;
      if (!given) {
        const verdicts = standard ? gradeCourse(null, standard) : [];
        const record = { kind, ...told, facts: null, findings: [], verdicts, whatWouldHaveWorked: null };
        return { record, series: null };
      }
      const { series, ...measured } = measureCourse({ exercise, ...given });
      const verdicts = standard ? gradeCourse(measured.facts, standard) : [];
      return { record: { kind, ...told, ...measured, verdicts }, series };
    }
    case "arc": {
      if (!given) break;
      const { series, ...measured } = measureArc({ exercise, legs: flight.legs, ...given });
      return { record: { kind: "arc", ...told, ...measured, verdicts: [] }, series };
    }
    case "descent": {
      if (!given) break;
      const { series, ...measured } = measureDescent({ exercise, ...given });
      const record = {
        kind: "descent" as const,
        ...told,
        ...measured,
        verdicts: [],
        whatWouldHaveWorked: null,
      };
      return { record, series };
    }
  }
  const { kind } = exercise;
  const record = { kind, ...told, facts: null, findings: [], verdicts: [], whatWouldHaveWorked: null };
  return { record, series: null };
}

/** The exercises of the brief, in its order, whether flown or not. */
export function briefedExercises(brief: Brief, flight: Flight): ExerciseResult[] {
  const matches = matchExercises(brief, {
    ...columnsOf(flight),
    trackAngle: flight.motion?.trackAngle ?? null,
    legs: flight.motion ? flight.legs : null,
  });
  return brief.exercises.map((exercise, i) => result(exercise, matches[i]!, "brief", flight));
}

/** Without a brief: lines fitted to the long straights; what is measured then is straightness, not deviation. */
export function fittedExercises(flight: Flight): ExerciseResult[] {
  if (!flight.motion) return [];
  return fitCourses(flight.motion, flight.legs).map(({ exercise, span }) =>
    result(exercise, { exercise: exercise.index, span, by: "fitted", confidence: 1 }, "fitted", flight),
  );
}
