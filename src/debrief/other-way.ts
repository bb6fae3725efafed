/** Whether an arc or a leg of the brief that was not found was flown the other way round, from its end to its beginning. */
import type { ArcExercise, Brief, CourseExercise, Exercise } from "../brief/brief.ts";
import { courseBetween } from "../geodesy/index.ts";
import { type FlownPath, type Match, matchExercises } from "../match/index.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import { shared } from "./hold-matches.ts";

const turnedRound = (arc: ArcExercise): ArcExercise => ({
  ...arc,
  fromRadial: arc.toRadial,
  toRadial: arc.fromRadial,
  fromMagnetic: arc.toMagnetic,
  toMagnetic: arc.fromMagnetic,
  turns: arc.turns === "right" ? "left" : "right",
});

/** Null for a course that is named for one fix: the other way it is another course. */
function legBack(leg: CourseExercise): CourseExercise | null {
  const { fix, fromFix } = leg;
  if (!fromFix) return null;
  return { ...leg, fix: fromFix, fromFix: fix, course: courseBetween(fix, fromFix), magnetic: null };
}

/** The finding, with the times of it; null where it was not, or where that is another exercise of the brief. */
export function otherWay(
  exercise: Exercise,
  brief: Brief,
  path: FlownPath,
  matches: readonly Match[],
): Finding | null {
  const isLine = exercise.kind === "course";
  if (!isLine && exercise.kind !== "arc") return null;
  const back = isLine ? legBack(exercise) : turnedRound(exercise);
  if (!back) return null;
  const [match] = matchExercises({ ...brief, exercises: [back] }, path);
  const span = match?.span;
  if (!span || matches.some((other) => other.span && shared(span, other.span))) return null;
  const at = (row: number): string | null => {
    const time = path.time?.[row];
    return time === undefined || Number.isNaN(time) ? null : utcText(time);
  };
  return {
    code: "flown-other-way",
    facts: isLine ? { from: back.kind === "course" ? back.fromFix!.ident : null, to: back.fix.ident } : {},
    evidence: { fromUtc: at(span.start), toUtc: at(span.end - 1) },
  };
}
