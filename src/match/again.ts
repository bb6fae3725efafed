/** Where else an approach was flown: the tries at it that lie in no exercise of the brief. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import type { Flown, FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";
import { triesOf } from "./tries.ts";

/** A run that ends so near to where an exercise begins led to that, as the last way inbound before a hold does. Chosen: a fix on the field lies no farther past a threshold. */
const LED_TO: NauticalMiles = 1;

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
