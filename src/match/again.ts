/** Where else an approach or a course was flown: what lies in no exercise of the brief. */
import type { ApproachExercise, CourseExercise } from "../brief/brief.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { acrossAt } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Share } from "../quantity/units.ts";
import { measured } from "./against.ts";
import type { Flown, FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";
import { triesOf } from "./tries.ts";

/** A run that ends so near to where an exercise begins led to that, as the last way inbound before a hold does. Chosen: a fix on the field lies no farther past a threshold. */
const LED_TO: NauticalMiles = 1;
/** A course was flown there as well for so far, within full scale for so much of that. Chosen: no chance crossing, and no lap of a short hold. */
const AS_WELL: NauticalMiles = 2;
const WITHIN: Share = 0.8;

/** Other tries at an approach that fit well and lie in no exercise of the brief (`cores`), in flown order. Scores are of the track alone, not of the way down. */
export function flownAgain(
  exercise: ApproachExercise,
  path: FlownPath,
  { flown }: Flown,
  runs: readonly Run[],
  cores: readonly Span[],
): Span[] {
  const before = ({ core }: Run, row: number) =>
    core.end <= row && flown[Math.min(row, flown.length - 1)]! - flown[core.end - 1]! > LED_TO;
  const apart = (run: Run) => cores.every(({ start, end }) => before(run, start) || run.core.start >= end);
  return triesOf(exercise, path, runs).flatMap((one) => {
    if (!one.every(apart)) return [];
    return one.reduce((a, b) => (b.score > a.score ? b : a)).core;
  });
}

/** Other runs along a course, clearly on it, that lie in no exercise of the brief (`cores`), in flown order: it was left by a turn and rejoined, or flown again. */
export function flownAsWell(
  exercise: CourseExercise,
  path: FlownPath,
  flown: Flown,
  runs: readonly Run[],
  cores: readonly Span[],
): Span[] {
  const apart = ({ core }: Run) => cores.every(({ start, end }) => core.end <= start || core.start >= end);
  const others = runs.filter(apart);
  if (others.length === 0) return [];
  const { along, across } = measured(exercise, path, flown);
  const reach = exercise.form === "leg" ? nauticalMilesFromMetres(exercise.course.length ?? 0) : 0;
  const onCourse = (i: number) =>
    Math.abs(across[i]!) <= acrossAt(exercise.scale, 1, Math.abs(reach - along[i]!));
  return others.flatMap(({ core: { start, end } }) => {
    if (Math.abs(along[end - 1]! - along[start]!) < AS_WELL) return [];
    let on = 0;
    for (let i = start; i < end; i++) if (onCourse(i)) on++;
    return on >= WITHIN * (end - start) ? [{ start, end }] : [];
  });
}
