/** The door of the matcher: a brief and a path in, when each exercise was flown out. */
import type { ApproachExercise, Brief, Exercise } from "../brief/brief.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import { flownAgain, flownAsWell } from "./again.ts";
import { approachRuns, asCourse, followedTo } from "./approach.ts";
import { arcRuns } from "./arc-runs.ts";
import { withDescents } from "./descents.ts";
import { type Flown, type FlownPath, flownOf } from "./flown.ts";
import type { Match } from "./match.ts";
import { inOrder, withOutOfOrder } from "./order.ts";
import { type Run, runsOf } from "./runs.ts";
import { isLastWhole, lastTryFirst } from "./tries.ts";
import { weighedByHeight } from "./way-down.ts";

export type { FlownPath } from "./flown.ts";
export type { Match } from "./match.ts";
export type { Run } from "./runs.ts";

/** A window given by the brief outweighs any run, so that what comes before and after it keeps its place. */
const GIVEN = 2;

/**
 * One match for each exercise, in the order of the brief.
 *
 * An exercise with a window has the rows of that window. The others are found by geometry: runs along the
 * course, within 45°, on the right side of the fix, assigned in the order of the brief. One flown out of that order is
 * found where it fits well and nothing else fits; else a window in the brief finds it. A course flown the other way is
 * never taken. An arc is found by its distance from the station and a track that turns with it; a descent by the passage of
 * its fix, between the exercises before and after it, as it may be flown along one of them. An approach is looked for
 * as its final course to the threshold, on it or coming down beside it, and has what followed it as well: the landing,
 * or the climb away; of several procedures the way down chooses as well, and of several tries at one the last whole one
 * is taken. A hold, a leg or a course that leads to its final fix along the same line ends there, and the approach
 * begins there: both have the passage of the fix. What else was
 * found for an exercise, as the laps of a hold, is given in `others` by its index, in flown order: it takes part in the
 * order like the runs of a course, and has its rows alone. Without it a hold is found by its window only.
 * Valid for: rows in flown order, finite positions; times may be missing.
 */
export function matchExercises(
  brief: Brief,
  path: FlownPath,
  others: ReadonlyMap<number, readonly Run[]> = new Map(),
): Match[] {
  const windows = brief.exercises.map((exercise) => windowOf(exercise, path));
  const flown = flownOf(path);
  const found = findInOrder(brief, windows, path, flown, others);
  return withDescents(brief, found, path, flown);
}

function findInOrder(
  brief: Brief,
  windows: readonly (Span | "outside" | null)[],
  path: FlownPath,
  flown: Flown,
  others: ReadonlyMap<number, readonly Run[]>,
): Match[] {
  const runs = brief.exercises.map((exercise, i) =>
    candidates(exercise, windows[i]!, windows, path, flown, others.get(i)),
  );
  const weighed = runs.map((own, i) => {
    const exercise = brief.exercises[i]!;
    if (exercise.kind !== "approach") return own;
    return lastTryFirst(exercise, path, own, weighedByHeight(exercise, path, own));
  });
  const chosen = withOutOfOrder(inOrder(weighed), weighed);
  const cores = chosen.flatMap((choice) => choice?.run.core ?? []);
  return windows.map((window, i): Match => {
    if (window !== null) {
      const span = window === "outside" ? null : window;
      return { exercise: i, span, by: "between", confidence: span ? 1 : 0 };
    }
    const choice = chosen[i];
    if (!choice) return { exercise: i, span: null, by: "geometry", confidence: 0 };
    const { run, rival } = choice;
    // An intercept ends where the exercise before ended; a cut corner belongs to the earlier leg, and a fix to both.
    const latest = run.latest ?? run.core.start;
    const before = cores.filter(({ start, end }) => start < latest && end < run.core.end - 1);
    const led = Math.max(run.span.start, ...before.map(({ end }) => end));
    const start = run.latest === undefined ? led : Math.min(led, latest);
    const exercise = brief.exercises[i]!;
    const isApproach = exercise.kind === "approach";
    const after = cores.filter((core) => core.start > latest);
    const next = Math.min(path.latitude.length, ...after.map((core) => core.start));
    const span = { start, end: isApproach ? followedTo(run.core.end, next, flown) : run.span.end };
    const confidence = run.score * (1 - Math.min(1, rival / run.score) / 2);
    if (exercise.kind === "course") {
      const as = flownAsWell(exercise, path, flown, runs[i]!, cores);
      return { exercise: i, span, by: "geometry", confidence, ...(as.length > 0 ? { again: as } : {}) };
    }
    const again = isApproach ? flownAgain(exercise, path, flown, runs[i]!, cores) : [];
    if (!isApproach || again.length === 0) return { exercise: i, span, by: "geometry", confidence };
    const asked = brief.exercises.filter((e, k) => isSame(exercise, e) && (chosen[k] || isSpan(windows[k])));
    const lastWhole = isLastWhole(exercise, path, runs[i]!, run);
    return { exercise: i, span, by: "geometry", confidence, again, asked: asked.length, lastWhole };
  });
}

const isSpan = (window: Span | "outside" | null | undefined): boolean =>
  window != null && window !== "outside";

/** The same final, asked for again. */
const isSame = ({ course }: ApproachExercise, other: Exercise): boolean =>
  other.kind === "approach" &&
  other.course.azimuth === course.azimuth &&
  other.course.origin.latitude === course.origin.latitude &&
  other.course.origin.longitude === course.origin.longitude;

/** The rows of the window that the brief gives, "outside" where the flight has none of it, null without a window. */
function windowOf({ between }: Exercise, { time }: FlownPath): Span | "outside" | null {
  if (!between || !time) return null;
  const start = firstAtOrAfter(time, between.start);
  const end = firstAtOrAfter(time, between.end);
  return end - start < 2 ? "outside" : { start, end };
}

function candidates(
  exercise: Exercise,
  window: Span | "outside" | null,
  windows: readonly (Span | "outside" | null)[],
  path: FlownPath,
  flown: Flown,
  others: readonly Run[] = [],
): readonly Run[] {
  if (window === "outside") return [];
  if (window) return [{ core: window, span: window, score: GIVEN }];
  if (path.latitude.length < 2) return [];
  return runsFor(exercise, path, flown, others).filter(
    ({ core, latest }) => !windows.some((w) => taken({ start: latest ?? core.start, end: core.end }, w)),
  );
}

function runsFor(exercise: Exercise, path: FlownPath, flown: Flown, others: readonly Run[]): readonly Run[] {
  if (exercise.kind === "arc") return arcRuns(exercise, path, flown);
  const course = asCourse(exercise);
  if (!course) return others;
  return exercise.kind === "approach"
    ? approachRuns(exercise, course, path, flown)
    : runsOf(course, path, flown);
}

/** Whether more than half of a run lies in the window of another exercise. */
function taken(core: Span, window: Span | "outside" | null): boolean {
  if (window === null || window === "outside") return false;
  const shared = Math.min(core.end, window.end) - Math.max(core.start, window.start);
  return shared > (core.end - core.start) / 2;
}
