/** Where else an approach was flown: the tries at it that lie in no exercise of the brief. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import type { FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";
import { triesOf } from "./tries.ts";

/** Other tries at an approach that fit well and lie in no exercise of the brief (`cores`), in flown order. Scores are of the track alone, not of the way down. */
export function flownAgain(
  exercise: ApproachExercise,
  path: FlownPath,
  runs: readonly Run[],
  cores: readonly Span[],
  taken: Run,
): Span[] {
  const own = runs.find(({ core }) => core === taken.core) ?? taken;
  const apart = ({ core }: Run) => cores.every(({ start, end }) => core.end <= start || core.start >= end);
  return triesOf(exercise, path, runs, own.score).flatMap((one) => {
    if (!one.every(apart)) return [];
    return one.reduce((a, b) => (b.score > a.score ? b : a)).core;
  });
}
