/** Each exercise of the brief, then what else was held; without a brief the long straights too: as they stand in the document. */
import type { Brief } from "../brief/brief.ts";
import { fitCourses } from "../course/index.ts";
import type { FoundHold } from "../hold/index.ts";
import { matchExercises } from "../match/index.ts";
import type { Span } from "../quantity/span.ts";
import {
  approachResult,
  arcResult,
  columnsOf,
  courseResult,
  descentResult,
  type ExerciseResult,
  type Flight,
  holdResult,
  unmeasured,
} from "./exercise-result.ts";
import { holdsBeside, holdWithin, runsOfHolds, shared } from "./hold-matches.ts";

/** Holds that were flown though no brief asked for them, in flown order. */
function foundHolds(
  taken: readonly Span[],
  brief: Brief | null,
  flight: Flight,
): [FoundHold, ExerciseResult][] {
  const { motion, legs } = flight;
  if (!motion) return [];
  // a brief says what was meant: what only may be a hold is not held against it
  const offered = holdsBeside(taken, motion, legs).filter((hold) => !brief || !hold.maybeCircuit);
  return offered.map((hold) => {
    const flown = { span: hold.span, by: "found", confidence: hold.sure ? 1 : 0.5 } as const;
    return [hold, holdResult(null, hold, flown, { ...flight, motion })];
  });
}

/** The exercises of the brief, in its order, whether flown or not; then the holds that it does not name. */
export function briefedExercises(brief: Brief, flight: Flight): ExerciseResult[] {
  const { motion, legs } = flight;
  const runs = motion ? runsOfHolds(brief, motion, legs) : new Map<number, never[]>();
  const matches = matchExercises(
    brief,
    {
      ...columnsOf(flight),
      trackAngle: motion?.trackAngle ?? null,
      legs: motion ? legs : null,
    },
    runs,
  );
  const held: Span[] = [];
  const results = brief.exercises.map((exercise, i): ExerciseResult => {
    const match = matches[i]!;
    const { span } = match;
    if (span && exercise.kind === "course") return courseResult(exercise, span, "brief", match, flight);
    if (span && exercise.kind === "arc") return arcResult(exercise, span, match, flight);
    if (span && exercise.kind === "descent") return descentResult(exercise, span, match, flight);
    if (span && exercise.kind === "approach") return approachResult(exercise, span, "brief", match, flight);
    if (!span || !motion || exercise.kind !== "hold") return unmeasured(exercise, match, flight);
    const found = holdWithin(exercise, span, runs.get(i) ?? [], motion, legs);
    if (!found) return unmeasured(exercise, match, flight);
    held.push(found.span);
    return holdResult(exercise, found, { ...match, span: found.span }, { ...flight, motion });
  });
  return [...results, ...foundHolds(held, brief, flight).map(([, result]) => result)];
}

/** Without a brief: the holds found, and lines fitted to the other long straights, in flown order; of a line straightness is measured, not deviation. */
export function fittedExercises(flight: Flight): ExerciseResult[] {
  if (!flight.motion) return [];
  const holds = foundHolds([], null, flight);
  const lines = fitCourses(flight.motion, flight.legs)
    .filter(({ span }) => !holds.some(([hold]) => shared(span, hold.span)))
    .map(({ exercise, span }) => {
      const flown = { span, by: "fitted", confidence: 1 } as const;
      return { span, result: courseResult(exercise, span, "fitted", flown, flight) };
    });
  return [...holds.map(([{ span }, result]) => ({ span, result })), ...lines]
    .sort((a, b) => a.span.start - b.span.start)
    .map(({ result }) => result);
}
