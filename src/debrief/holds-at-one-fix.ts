/** Several holds that a brief asks for at one fix, on other courses or with other turns: each is looked for between the passes of the fix, for laps that are all its own. */
import type { Exercise, HoldExercise } from "../brief/brief.ts";
import { type FoundHold, holdAgainst } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { passesOf } from "./fix-passes.ts";
import { type AtFix, allOwn, endsOther } from "./own-laps.ts";
import { atSameFix } from "./same-fix.ts";

/** Inbound courses farther apart than this are of other holds; nearer, the laps do not tell them apart. Chosen: half of what the other side speaks for. */
const APART: AngleSize = 15;
/** No lap is shorter: two half turns at rate one. */
const SHORTEST_LAP: Seconds = 120;
/** The laps are all found where so many passes more added none. Chosen: an entry has two. */
const MORE_PASSES = 3;

/** What else is asked for at the same fix; null where nothing is, or only the same hold again. */
export function atOneFix(
  exercise: HoldExercise,
  exercises: readonly Exercise[],
  motion: Motion,
): AtFix | null {
  const { fix, course, turns, index } = exercise;
  const others = exercises.filter(
    (other): other is HoldExercise =>
      other.kind === "hold" &&
      other.index !== index &&
      atSameFix(exercise, other) &&
      (other.turns !== turns || Math.abs(turnFrom(course.azimuth, other.course.azimuth)) > APART),
  );
  return others.length === 0 ? null : { exercise, others, passes: passesOf(fix, motion), motion };
}

/** The holds of an exercise that lie between two passes of its fix, in which every lap is its own; each once. */
export function holdsBetweenPasses(at: AtFix, legs: readonly Leg[]): FoundHold[] {
  const { passes, motion } = at;
  const { fix, course, turns } = at.exercise;
  const holds = new Map<string, FoundHold>();
  passes.forEach((first, i) => {
    const seen = i === 0 ? motion : onFrom(motion, first.wayBack);
    const other = passes.slice(0, i).findLast((pass) => endsOther(at, pass));
    const heldBefore = other ? { heldBefore: other.time } : {};
    let without = 0;
    for (const last of passes.slice(i + 1)) {
      if (last.time - first.time < SHORTEST_LAP * 1000) continue;
      const within = legs.filter((leg) => lies(leg, { start: first.row, end: last.row }));
      const hold = holdAgainst(seen, within, { fix, inbound: course.azimuth, turns });
      const own = hold !== null && allOwn(at, hold);
      without = own ? 0 : without + 1;
      if (own) holds.set(`${hold.span.start} ${hold.span.end}`, { ...heldBefore, ...hold });
      if (without >= MORE_PASSES) break;
    }
  });
  return [...holds.values()];
}

/** A straight may lead to the first pass and away from the last; of a turn the most of it lies between. */
function lies({ kind, span }: Leg, { start, end }: Span): boolean {
  if (kind === "straight") return span.start < end && span.end > start;
  const middle = (span.start + span.end) / 2;
  return middle > start && middle < end;
}

/** The flight from a row on. */
const onFrom = (motion: Motion, row: number): Motion => ({
  ...motion,
  spans: motion.spans
    .filter(({ end }) => end > row)
    .map(({ start, end }) => ({ start: Math.max(start, row), end })),
});
