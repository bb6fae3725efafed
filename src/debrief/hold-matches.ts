/** Where the holds of a brief were flown, for the matcher to put in the brief's order, and what else was held. */
import type { Brief, HoldExercise } from "../brief/brief.ts";
import type { Position } from "../geodesy/position.ts";
import { type FoundHold, findHolds, holdAgainst } from "../hold/index.ts";
import type { Run } from "../match/index.ts";
import type { Span } from "../quantity/span.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";

/** A run of a hold outweighs any inbound leg of its own that is taken for a course. Chosen: a course scores 1 at most. */
const HELD = 1;
/** A hold without a whole lap may be something else, and one turned the wrong way may be another of the brief's. Chosen. */
const WITHOUT_A_LAP = 0.5;
const WRONG_WAY = 0.7;

export interface HeldRun extends Run {
  readonly hold: FoundHold;
}

const runOf = (hold: FoundHold, { turns }: HoldExercise): HeldRun => ({
  hold,
  span: hold.span,
  core: hold.span,
  score:
    (hold.laps.some((lap) => lap.complete) ? HELD : WITHOUT_A_LAP) * (hold.turns === turns ? 1 : WRONG_WAY),
});

/** Every time that a published hold was flown among some legs, in flown order: it is looked for again before and after. */
function runsOfHold(exercise: HoldExercise, motion: Motion, legs: readonly Leg[]): HeldRun[] {
  if (legs.length === 0) return [];
  const { fix, course, turns } = exercise;
  const hold = holdAgainst(motion, legs, { fix, inbound: course.azimuth, turns });
  if (!hold) return [];
  const before = legs.filter(({ span }) => span.end <= hold.span.start);
  const after = legs.filter(({ span }) => span.start >= hold.span.end);
  return [
    ...runsOfHold(exercise, motion, before),
    runOf(hold, exercise),
    ...runsOfHold(exercise, motion, after),
  ];
}

/** By exercise of the brief. Windows are the matcher's: what was flown within one is looked for once it is known. */
export function runsOfHolds(brief: Brief, motion: Motion, legs: readonly Leg[]): Map<number, HeldRun[]> {
  const runs = new Map<number, HeldRun[]>();
  for (const exercise of brief.exercises) {
    if (exercise.kind === "hold") runs.set(exercise.index, runsOfHold(exercise, motion, legs));
  }
  return runs;
}

/** The hold in the rows of a match: as found there before, or looked for within the window that the brief gives. */
export function holdWithin(
  exercise: HoldExercise,
  span: Span,
  runs: readonly HeldRun[],
  motion: Motion,
  legs: readonly Leg[],
): FoundHold | null {
  const known = runs.find(
    (run) => run.span.end > span.start && run.span.end <= span.end && shared(run.span, span),
  );
  if (known) return known.hold;
  const within = legs.filter((leg) => leg.span.start < span.end && leg.span.end > span.start);
  return runsOfHold(exercise, motion, within)[0]?.hold ?? null;
}

/** Whether more than half of the first lies in the second. */
export function shared(first: Span, second: Span): boolean {
  const both = Math.min(first.end, second.end) - Math.max(first.start, second.start);
  return both > (first.end - first.start) / 2;
}

/** Holds that no brief asked for: all that were found and are not among those taken. A circuit round a known runway is none. */
export function holdsBeside(
  taken: readonly Span[],
  motion: Motion,
  legs: readonly Leg[],
  runways: readonly Position[],
): FoundHold[] {
  return findHolds(motion, legs, { runways }).filter(
    (hold) => !taken.some((span) => shared(hold.span, span)),
  );
}
