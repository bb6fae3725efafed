/** The runs of the path that may be an exercise: along its course, near it, on the right side of its fix. */
import type { CourseExercise } from "../brief/brief.ts";
import { sinDeg } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { acrossAt } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { type Against, measured } from "./against.ts";
import { type Flown, type FlownPath, turnAt } from "./flown.ts";
import { scoreOf } from "./score.ts";

/** A candidate. `core` is the part along the course, `span` has the intercept before it as well. */
export interface Run {
  readonly span: Span;
  readonly core: Span;
  /** How well it fits, 0 to 1. */
  readonly score: number;
  /** The row of the core from which on it needs to be its own at the latest: what was flown before may lead up to here. */
  readonly latest?: number;
}

/** Track within this of the course: half-way to square across it. */
export const ALIGNED_DEG = 45;
/** An intercept is cut at 90° at most; 10° for wind and wander. */
const INTERCEPT_DEG = 100;
/** Tracks nearer to the course than this neither close nor open. */
const CLOSING_DEG = 5;
/** A track that closes by so much, still so far off, is an intercept. Chosen, not tuned. */
const CUT_DEG = 15;
const CUT_NM = 0.25;
/** Off course by so much, an aircraft may still be trying: at least, and at most. Chosen so that a pilot 2 NM off is found with room to spare, not tuned. */
const CAPTURE_NM = { least: 3, most: 6 };
/** Full scales that still count as trying. Chosen, not tuned. */
const CAPTURE_SCALES = 3;
/** An intercept may begin so far from the course. Chosen, not tuned. */
const INTERCEPT_NM = 8;
/** An intercept may go through the course by so much before the turn onto it. Chosen: a turn begun on the course at 90° and 120 kt goes 0.6 NM past. */
const OVERSHOT_NM = 1;
/** A break in a run that is bridged: a cut back to the course of more than 45° is over in 20 s. Chosen, not tuned. */
export const BRIDGED_NM = 0.6;
/** A turn that leaves or joins a course, rather than corrects along it. Chosen: corrections are of 30° at most in common practice. */
export const TURN_AWAY_DEG = 40;
/** A turn by so much after which the course is left behind for so far is no correction either. Chosen: the 45 degrees of a procedure turn, less what wind takes of them. */
const ASIDE_DEG = 25;
const ASIDE_NM = 0.5;
/** A course flown for less than this is none; a short leg from a third of its length, since the turns at both ends take their part. Chosen, not tuned. */
export const SHORTEST_NM = 1;
/** Runs that fit worse than this are chance. Chosen, not tuned: 1 NM flown at 2 NM and 12° off, far from the fix, has 0.12. */
const LEAST_SCORE = 0.06;

/** Every run in flown order. `atFix`: what is enough of a run that ends so near to its fix, where that is less than of any other. */
export function runsOf(
  exercise: CourseExercise,
  path: FlownPath,
  flown: Flown,
  atFix?: { readonly made: NauticalMiles; readonly left: NauticalMiles },
): Run[] {
  const against = measured(exercise, path, flown);
  const { along, flown: distance } = against;
  const n = along.length;
  const reach = exercise.course.length === null ? null : exercise.course.length / METRES_PER_NAUTICAL_MILE;
  const onSide = (i: number): boolean =>
    exercise.form === "to" ? along[i]! <= 0 : along[i]! >= 0 && (reach === null || along[i]! <= reach);
  const near = (i: number): boolean =>
    onSide(i) && Math.abs(against.across[i]!) <= capture(exercise, along[i]!);

  const cores: { start: number; end: number }[] = [];
  let bridge = true;
  for (let i = 0; i < n; i++) {
    if (!near(i) || turnAtEnd(i)) bridge = false;
    if (!near(i) || Math.abs(against.trackError[i]!) > ALIGNED_DEG) continue;
    const last = cores.at(-1);
    if (last && (last.end === i || (bridge && distance[i]! - distance[last.end - 1]! <= BRIDGED_NM)))
      last.end = i + 1;
    else cores.push({ start: i, end: i + 1 });
    bridge = true;
  }
  /** Whether a row outside the aligned part is in a turn away: no run goes on over that. */
  function turnAtEnd(i: number): boolean {
    return Math.abs(against.trackError[i]!) > ALIGNED_DEG && turnAt(flown.turns, i, TURN_AWAY_DEG) !== null;
  }

  const least = reach === null ? SHORTEST_NM : Math.min(SHORTEST_NM, reach / 3);
  return cores.flatMap((core): Run[] => {
    const trimmed = withoutTurnAside(withoutTurns(core, flown), against, flown);
    if (trimmed.end - trimmed.start < 2) return [];
    const ends = along[trimmed.end - 1]!;
    const enough = atFix && Math.abs(ends) <= atFix.left ? Math.min(least, atFix.made) : least;
    if (Math.abs(ends - along[trimmed.start]!) < enough) return [];
    const score = scoreOf(against, trimmed);
    if (score < LEAST_SCORE) return [];
    const start = interceptStart(trimmed.start, against, flown, onSide);
    return [{ core: trimmed, span: { start, end: trimmed.end }, score }];
  });
}

/** How far off course an aircraft is still taken to fly the exercise. */
function capture({ scale }: CourseExercise, along: NauticalMiles): NauticalMiles {
  return Math.min(CAPTURE_NM.most, Math.max(CAPTURE_NM.least, acrossAt(scale, CAPTURE_SCALES, along)));
}

/** A run begins when the turn onto the course is over, and ends when the turn away begins. */
export function withoutTurns(core: Span, { turns }: Flown): Span {
  let { start, end } = core;
  for (const turn of turns) {
    if (Math.abs(turn.turn) < TURN_AWAY_DEG) continue;
    if (turn.start < core.start && core.start < turn.end) start = turn.end;
    if (turn.start < core.end && core.end < turn.end) end = turn.start;
  }
  return { start, end };
}

/** A run that ends with a turn aside and the way on from there, as a procedure turn does, ends where that turn begins. */
function withoutTurnAside(
  { start, end }: Span,
  { across, trackError, flown: distance }: Against,
  { turns }: Flown,
): Span {
  let aside = end;
  const opens = (i: number) => Math.abs(trackError[i]!) > ASIDE_DEG && across[i]! * trackError[i]! > 0;
  while (aside > start && opens(aside - 1)) aside--;
  if (aside === end || distance[end - 1]! - distance[aside]! < ASIDE_NM) return { start, end };
  const turn = turnAt(turns, aside, ASIDE_DEG) ?? turnAt(turns, aside - 1, ASIDE_DEG);
  return turn && turn.start > start + 1 ? { start, end: turn.start } : { start, end };
}

/** The row where the straight that closes on the course begins, else the start of the core. */
function interceptStart(
  start: number,
  { across, trackError }: Against,
  { turns }: Flown,
  onSide: (row: number) => boolean,
): number {
  const closes = (i: number): boolean =>
    onSide(i) &&
    Math.abs(across[i]!) <= INTERCEPT_NM &&
    Math.abs(trackError[i]!) <= INTERCEPT_DEG &&
    Math.abs(trackError[i]!) >= CLOSING_DEG &&
    (across[i]! * sinDeg(trackError[i]!) < 0 || Math.abs(across[i]!) <= OVERSHOT_NM);
  const cuts = closes(start) && Math.abs(trackError[start]!) >= CUT_DEG && Math.abs(across[start]!) >= CUT_NM;
  let row = start - 1;
  if (cuts && turnAt(turns, row, 0) !== null) return start; // the turn led onto the intercept, not onto the course
  row = (turnAt(turns, row, 0)?.start ?? row + 1) - 1; // over the turn onto the course
  let first = start;
  while (row >= 0 && closes(row) && turnAt(turns, row, 0) === null) first = row--;
  return first;
}
