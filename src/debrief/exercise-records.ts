/** Each exercise of the brief, then the holds and finals that were found beside it; without a brief the long straights too: as they stand in the document. */
import { findApproaches } from "../approach/index.ts";
import type { Brief, Exercise } from "../brief/brief.ts";
import { descentPointRow, fitCourses } from "../course/index.ts";
import type { Position } from "../geodesy/position.ts";
import type { FoundHold } from "../hold/index.ts";
import { matchExercises } from "../match/index.ts";
import type { Span } from "../quantity/span.ts";
import { arcInSilence } from "./arc-in-silence.ts";
import {
  approachResult,
  arcResult,
  columnsOf,
  courseResult,
  descentResult,
  type ExerciseResult,
  type Flight,
  holdResult,
} from "./exercise-result.ts";
import { heldOtherwise } from "./held-otherwise.ts";
import { holdAtLogEnd } from "./hold-at-log-end.ts";
import { holdInSilence } from "./hold-in-silence.ts";
import { holdsBeside, holdWithin, runsOfHolds, shared } from "./hold-matches.ts";
import { notSeen } from "./not-seen.ts";
import { otherWay } from "./other-way.ts";
import { turnedAtFix } from "./turned-at-fix.ts";
import { unmeasured } from "./unmeasured.ts";

/** What was flown though no brief asked for it, with its rows. */
interface Beside {
  readonly span: Span;
  readonly result: ExerciseResult;
}

/** Thresholds of all known runways, those of the brief's approaches among them. */
const thresholds = (brief: Brief | null, { runways }: Flight): Position[] => [
  ...runways.map(({ threshold }) => threshold),
  ...(brief?.exercises ?? []).flatMap((e) => (e.kind === "approach" ? [e.runway.threshold] : [])),
];

/** Holds that no brief asked for, in flown order. */
function foundHolds(taken: readonly Span[], brief: Brief | null, flight: Flight): FoundHold[] {
  const { motion, legs } = flight;
  if (!motion) return [];
  const all = holdsBeside(taken, motion, legs, thresholds(brief, flight));
  // a brief says what was meant: what only may be a hold is not held against it
  return all.filter((hold) => !brief || !hold.maybeCircuit);
}

function besides(holds: readonly FoundHold[], flight: Flight): Beside[] {
  const { motion } = flight;
  if (!motion) return [];
  return holds.map((hold) => {
    const { span } = hold;
    const flown = { span, by: "found", confidence: hold.sure ? 1 : 0.5 } as const;
    return { span, result: holdResult(null, hold, flown, { ...flight, motion }) };
  });
}

/** Finals to known runways that no brief asked for, in flown order. */
function foundApproaches(taken: readonly Span[], flight: Flight): Beside[] {
  const { motion, runways } = flight;
  if (!motion) return [];
  return findApproaches(motion, runways)
    .filter(({ final }) => !taken.some((span) => shared(final, span)))
    .map(({ exercise, span }) => {
      const flown = { span, by: "found", confidence: 1 } as const;
      return { span, result: approachResult(exercise, span, "found", flown, flight) };
    });
}

const inFlownOrder = (found: readonly Beside[]): ExerciseResult[] =>
  found.toSorted((a, b) => a.span.start - b.span.start).map(({ result }) => result);

/** The exercises of the brief, in its order, whether flown or not; then the holds and approaches that it does not name. */
export function briefedExercises(brief: Brief, flight: Flight): ExerciseResult[] {
  const { motion, legs } = flight;
  const runs = motion ? runsOfHolds(brief, motion, legs) : new Map<number, never[]>();
  const path = {
    ...columnsOf(flight),
    trackAngle: motion?.trackAngle ?? null,
    legs: motion ? legs : null,
  };
  const matches = matchExercises(brief, path, runs);
  const silentAt = (exercise: Exercise) =>
    (exercise.kind === "hold" && motion ? holdInSilence(exercise, motion) : null) ??
    (exercise.kind === "arc" && motion ? arcInSilence(exercise, motion) : null);
  const found = brief.exercises.map((exercise, i) => {
    const { span } = matches[i]!;
    if (!span || !motion || exercise.kind !== "hold") return null;
    return holdWithin(exercise, span, runs.get(i) ?? [], motion, legs);
  });
  const beside = foundHolds(
    found.flatMap((hold) => hold?.span ?? []),
    brief,
    flight,
  );
  // what was flown instead does not tell that it was not flown as asked where nobody saw it
  const unseen = (i: number) => {
    const exercise = brief.exercises[i]!;
    const why = matches[i]!.span ? null : notSeen(i, brief.exercises, matches, motion, flight.leftOut);
    if (exercise.kind !== "hold")
      return (
        silentAt(exercise) ?? why ?? (matches[i]!.span ? null : otherWay(exercise, brief, path, matches))
      );
    if (!motion) return why;
    const flown = matches.flatMap(({ span }) => span ?? []);
    const any = (some: typeof matches) => some.some(({ span }) => span !== null);
    const seen = { before: any(matches.slice(0, i)), after: any(matches.slice(i + 1)) };
    return (
      why ??
      silentAt(exercise) ??
      holdAtLogEnd(
        exercise,
        motion,
        seen,
        beside.map(({ span }) => span),
      ) ??
      heldOtherwise(exercise, beside, motion) ??
      turnedAtFix(exercise, motion, flown)
    );
  };
  const points = brief.exercises.map((exercise, i) => {
    const { span } = matches[i]!;
    return span && exercise.kind === "descent" ? descentPointRow(exercise, columnsOf(flight), span) : null;
  });
  const results = brief.exercises.map((exercise, i): ExerciseResult => {
    const match = matches[i]!;
    const { span } = match;
    if (span && exercise.kind === "course") {
      // the laps of a hold to the same fix are no courses
      const again = (match.again ?? []).filter((other) => !beside.some((hold) => shared(hold.span, other)));
      return courseResult(exercise, span, "brief", { ...match, again }, flight);
    }
    if (span && exercise.kind === "arc") return arcResult(exercise, span, match, flight);
    if (span && exercise.kind === "descent")
      return descentResult(exercise, span, match, flight, lastBefore(points[i]!, points.slice(0, i)));
    if (span && exercise.kind === "approach") return approachResult(exercise, span, "brief", match, flight);
    if (!span || !motion || exercise.kind !== "hold") return unmeasured(exercise, match, flight, unseen(i));
    const hold = found[i];
    if (!hold) return unmeasured(exercise, match, flight, unseen(i));
    return holdResult(exercise, hold, { ...match, span: hold.span }, { ...flight, motion });
  });
  const flown = matches.flatMap(({ span }) => (span ? [span] : []));
  return [...results, ...inFlownOrder([...besides(beside, flight), ...foundApproaches(flown, flight)])];
}

/**
 * Without a brief: the holds and the finals found, and lines fitted to the other long straights, in flown order; of a
 * line straightness is measured, not deviation.
 */
export function fittedExercises(flight: Flight): ExerciseResult[] {
  if (!flight.motion) return [];
  const found = [...besides(foundHolds([], null, flight), flight), ...foundApproaches([], flight)];
  const lines = fitCourses(flight.motion, flight.legs)
    .filter(({ span }) => !found.some((other) => shared(span, other.span)))
    .map(({ exercise, span }) => {
      const flown = { span, by: "fitted", confidence: 1 } as const;
      return { span, result: courseResult(exercise, span, "fitted", flown, flight) };
    });
  return inFlownOrder([...found, ...lines]);
}

/** The latest of some rows that lies before a row; null where none does. */
function lastBefore(row: number, rows: readonly (number | null)[]): number | null {
  const before = rows.filter((r) => r !== null && r < row);
  return before.length > 0 ? Math.max(...(before as number[])) : null;
}
