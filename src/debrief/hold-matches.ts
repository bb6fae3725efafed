/** Where the holds of a brief were flown, for the matcher to put in the brief's order, and what else was held. */
import type { Brief, HoldExercise } from "../brief/brief.ts";
import type { Position } from "../geodesy/position.ts";
import { type FoundHold, type FoundLap, findHolds, holdAgainst } from "../hold/index.ts";
import type { Run } from "../match/index.ts";
import type { Span } from "../quantity/span.ts";
import type { Seconds } from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { askedAgain, partsFor } from "./hold-parts.ts";
import { atOneFix, holdsBetweenPasses } from "./holds-at-one-fix.ts";
import { ownShare } from "./own-laps.ts";

/** A run of a hold outweighs any inbound leg of its own that is taken for a course. Chosen: a course scores 1 at most. */
const HELD = 1;
/** A hold without a whole lap may be something else, and one turned the wrong way may be another of the brief's. Chosen. */
const WITHOUT_A_LAP = 0.5;
const WRONG_WAY = 0.7;
/** A hold begun so soon after another goes on with it. Chosen: half a turn at rate one. */
const AT_ONCE: Seconds = 30;

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
function holdsOf(exercise: HoldExercise, motion: Motion, legs: readonly Leg[]): FoundHold[] {
  if (legs.length === 0) return [];
  const { fix, course, turns } = exercise;
  const hold = holdAgainst(motion, legs, { fix, inbound: course.azimuth, turns });
  if (!hold) return [];
  const before = legs.slice(0, legsBefore(legs, hold));
  const after = legs.slice(legsAfter(legs, hold));
  return [
    ...(before.length < legs.length ? holdsOf(exercise, motion, before) : []),
    hold,
    ...(after.length < legs.length ? later(hold, holdsOf(exercise, since(motion, hold), after)) : []),
  ];
}

const later = ({ laps }: FoundHold, holds: readonly FoundHold[]): FoundHold[] =>
  holds.map((hold) => ({ heldBefore: laps.at(-1)!.times.end, ...hold }));

/** How many legs belong to what was flown before a hold: the straight that led to its fix ends that as well. */
function legsBefore(legs: readonly Leg[], { span: { start } }: FoundHold): number {
  const first = legs.findIndex(({ span }) => span.end > start);
  if (first < 0) return legs.length;
  const { kind, span } = legs[first]!;
  return kind === "straight" && span.start < start ? first + 1 : first;
}

/** The first leg that may belong to what was flown after a hold: the last straight inbound leads to that too. */
function legsAfter(legs: readonly Leg[], { span: { end } }: FoundHold): number {
  const inbound = legs.findLastIndex(({ kind, span }) => kind === "straight" && span.start < end);
  if (inbound >= 0) return inbound;
  const after = legs.findIndex(({ span }) => span.start >= end);
  return after < 0 ? legs.length : after;
}

/** The flight as it shows how a later hold was entered: the laps of the one before, but for its last way back, are no part of that. */
function since(motion: Motion, { laps }: FoundHold): Motion {
  const from = laps.at(-1)!.inboundTurn.start;
  const spans = motion.spans.filter(({ end }) => end > from);
  return { ...motion, spans: spans.map(({ start, end }) => ({ start: Math.max(start, from), end })) };
}

/** Holds turned to the same side, each begun where the one before ended. */
function inARow(holds: readonly FoundHold[], { time }: Motion): FoundHold[][] {
  const rows: FoundHold[][] = [];
  for (const hold of holds) {
    const last = rows.at(-1)?.at(-1);
    const after = last && (time[hold.span.start]! - last.laps.at(-1)!.times.end) / 1000;
    if (after !== undefined && Math.abs(after) < AT_ONCE && last!.turns === hold.turns)
      rows.at(-1)!.push(hold);
    else rows.push([hold]);
  }
  return rows;
}

/** By exercise of the brief. Windows are the matcher's: what was flown within one is looked for once it is known. */
export function runsOfHolds(brief: Brief, motion: Motion, legs: readonly Leg[]): Map<number, HeldRun[]> {
  const runs = new Map<number, HeldRun[]>();
  for (const exercise of brief.exercises) {
    if (exercise.kind !== "hold") continue;
    const atFix = atOneFix(exercise, brief.exercises, motion);
    const whole = holdsOf(exercise, motion, legs);
    const between = atFix ? holdsBetweenPasses(atFix, legs) : [];
    const rows = [...inARow(whole, motion), ...between.map((hold) => [hold])];
    const parts = askedAgain(exercise, brief.exercises)
      ? rows.flatMap((row) => partsFor(exercise, brief.exercises, row, motion))
      : rows.flat().map((hold) => ({ hold, score: 1 }));
    const holds = parts.map(({ hold }) => hold);
    const own = parts.map(({ hold, score }) => {
      const run = runOf(hold, exercise);
      const share = atFix ? ownShare(atFix, hold, holds) : 1;
      return { ...run, score: run.score * score * share };
    });
    runs.set(
      exercise.index,
      own.sort((a, b) => a.span.start - b.span.start),
    );
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
  const both = (run: Span) => Math.min(run.end, span.end) - Math.max(run.start, span.start);
  const length = (run: Span) => run.end - run.start;
  const [known] = runs
    .filter((run) => run.span.end > span.start && run.span.end <= span.end && shared(run.span, span))
    .sort((a, b) => both(b.span) - both(a.span) || length(a.span) - length(b.span));
  if (known) return known.hold;
  const within = legs.filter((leg) => leg.span.start < span.end && leg.span.end > span.start);
  return holdsOf(exercise, motion, within)[0] ?? null;
}

/** Whether more than half of the first lies in the second. */
export const shared = (first: Span, second: Span): boolean => covered(first, [second]);

/** Whether more than half of the first lies in the others together. */
function covered({ start, end }: Span, others: readonly Span[]): boolean {
  let rows = 0;
  for (let row = start; row < end; row++)
    if (others.some((other) => row >= other.start && row < other.end)) rows++;
  return rows > (end - start) / 2;
}

/**
 * Holds that no brief asked for: all that were found and are not among those taken. A circuit round a known runway is
 * none. Laps that are taken are told there: of a hold that has such, what is left is told only if it is a hold by itself.
 */
export function holdsBeside(
  taken: readonly Span[],
  motion: Motion,
  legs: readonly Leg[],
  runways: readonly Position[],
): FoundHold[] {
  const hints = { runways };
  const { time } = motion;
  // more than the pass that ends one and begins the next
  const isTaken = ({ outboundTurn, inbound }: FoundLap) =>
    taken.some(({ start, end }) => {
      const [from, to] = [Math.max(outboundTurn.start, start), Math.min(inbound.end, end) - 1];
      return to > from && time[to]! - time[from]! > AT_ONCE * 1000;
    });
  return findHolds(motion, legs, hints)
    .filter(({ span }) => !covered(span, taken))
    .flatMap((hold) => {
      if (!hold.laps.some(isTaken)) return [hold];
      return besideTaken(hold, taken, legs)
        .flatMap((rest) => findHolds(motion, rest, hints))
        .filter(({ laps, alone }) => !alone && !laps.some(isTaken));
    });
}

/** The legs of a hold that lie outside what is taken, in pieces; the straights that led to it and away from it are among both. */
function besideTaken({ span }: FoundHold, taken: readonly Span[], legs: readonly Leg[]): Leg[][] {
  const pieces: Leg[][] = [[]];
  for (const leg of legs) {
    if (leg.span.end <= span.start || leg.span.start >= span.end) continue;
    const own = covered(leg.span, taken);
    if (!own || leg.kind === "straight") pieces.at(-1)!.push(leg);
    if (own) pieces.push(leg.kind === "straight" ? [leg] : []);
  }
  return pieces.filter((piece) => piece.some(({ kind }) => kind === "turn"));
}
