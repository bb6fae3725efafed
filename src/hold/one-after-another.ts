/** Two holds found one after the other: whether they are one, and which of them is told where they overlap. */
import { inverse } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Motion } from "../track/motion.ts";
import type { FoundHold } from "./found.ts";

/** A pass that ends one hold and begins the next is the same if so near in time, s, and place, NM. Chosen. */
const SAME_PASS_SECONDS = 30;
const SAME_FIX = 0.5;
/** ... and the parts of a hold on both sides of a silence are one within so many degrees and s. Chosen: two laps and some. */
const SAME_COURSE = 15;
const SILENT_SECONDS = 600;

/**
 * A parallel entry is a lap the other way round, and may be taken for a hold of its own. The hold that both are, or
 * null where they are two.
 */
export function sameHold(motion: Motion, first: FoundHold, second: FoundHold): FoundHold | null {
  const seconds = (motion.time[second.span.start]! - first.laps.at(-1)!.times.end) / 1000;
  if (first.turns !== second.turns && first.laps.length === 1 && seconds < SAME_PASS_SECONDS) {
    const apart = inverse(first.fix, second.fix).distance / METRES_PER_NAUTICAL_MILE;
    if (second.span.start < first.span.end && second.entry === "parallel") return second;
    if (apart < SAME_FIX)
      return {
        ...second,
        entry: "parallel",
        alone: false,
        span: { ...second.span, start: first.span.start },
      };
  }
  if (silenceBetween(motion, first, second) && seconds < SILENT_SECONDS && sameRacetrack(first, second)) {
    const surer = first.laps.length >= second.laps.length ? first : second;
    const span = { start: first.span.start, end: second.span.end };
    return { ...surer, span, entry: first.entry, laps: [...first.laps, ...second.laps], alone: false };
  }
  return null;
}

/** Of two that overlap: the one that is meant, else the one of more laps. */
export function rather(
  first: FoundHold,
  second: FoundHold,
  meant: ((hold: FoundHold) => boolean) | undefined,
): FoundHold {
  if (meant && meant(first) !== meant(second)) return meant(first) ? first : second;
  return second.laps.length > first.laps.length ? second : first;
}

/** Whether the second was looked for, with its entry, among what the first was flown in. */
export const overlap = (first: FoundHold, second: FoundHold): boolean =>
  second.span.start < first.span.end - 1;

/** Whether its laps begin where those of the first ended, or later: it is another, however it was entered. */
export const lapsAfter = (first: FoundHold, second: FoundHold): boolean =>
  second.laps[0]!.times.start > first.laps.at(-1)!.times.end - SAME_PASS_SECONDS * 1000;

/** The flight as it shows how a later hold was entered: the laps of the one before, but for its last way back, are no part of that. */
export const since = (motion: Motion, { laps }: FoundHold): Motion =>
  onFrom(motion, laps.at(-1)!.inboundTurn.start);

/** The flight from a row on. */
export const onFrom = (motion: Motion, row: number): Motion => ({
  ...motion,
  spans: motion.spans
    .filter(({ end }) => end > row)
    .map(({ start, end }) => ({ start: Math.max(start, row), end })),
});

/** A hold that began with the pass that ended another, or later: from there on; null where it began before. */
export function goingOn({ time }: Motion, first: FoundHold, second: FoundHold): FoundHold | null {
  const start = Math.max(second.span.start, first.span.end - 1);
  return time[start]! - time[second.span.start]! <= SAME_PASS_SECONDS * 1000
    ? { ...second, span: { ...second.span, start } }
    : null;
}

/** A hold that knows when another at its fix ended, before it. */
export const heldAgain = ({ fix, laps }: FoundHold, hold: FoundHold): FoundHold =>
  inverse(fix, hold.fix).distance / METRES_PER_NAUTICAL_MILE < SAME_FIX
    ? { ...hold, heldBefore: laps.at(-1)!.times.end }
    : hold;

const silenceBetween = (motion: Motion, first: FoundHold, second: FoundHold): boolean =>
  motion.spans.some(({ start }) => start >= first.span.end && start <= second.span.start);

const sameRacetrack = (first: FoundHold, second: FoundHold): boolean =>
  first.turns === second.turns &&
  inverse(first.fix, second.fix).distance / METRES_PER_NAUTICAL_MILE <
    Math.hypot(SAME_FIX, first.fix95, second.fix95) &&
  Math.abs(turnFrom(first.inbound, second.inbound)) <
    Math.hypot(SAME_COURSE, first.inbound95, second.inbound95);
