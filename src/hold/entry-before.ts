/** The entry before the first lap, where the reading did not see it at first: laps that drifted put the fix elsewhere. */
import { turnFrom } from "../quantity/angle.ts";
import type { UtcMillis } from "../quantity/units.ts";
import { entryOf } from "./entry.ts";
import { type FixAndCourse, fixAndCourse } from "./fix-and-course.ts";
import type { Ground, Place } from "./ground.ts";
import { DRIFTED_SECONDS, entryPass, type Pass, trackAt } from "./near-fix.ts";
import { ALONG, parallelPass, straightBefore, turnedBack } from "./parallel-entry.ts";
import { noEntryCost, outboundSeconds, type Reading } from "./reading.ts";

/** A course found anew with the entry is right where that passed the fix within so many seconds of flight, after so many rounds. Chosen. */
const OVER_SECONDS = 5;
const ROUNDS = 3;
/** Of a single lap the course may be that of a cut: the entry's outbound leg shows it better where both are no farther apart, degrees. Chosen: two cuts of 30 and a correction. */
const OTHER_COURSE = 75;
/** Readings of both ends are nearly as likely up to this apart (log); an entry is worth so much, as that which the first look sees. Tuned on simulation, seeds 1 to 1000. */
const CLOSE = 6;
const ENTRY_WORTH = 3;

export interface Entered {
  readonly reading: Reading;
  readonly known: FixAndCourse;
}

/** The reading with its entry, and the fix and course that both show; `readings`: of the same row. */
export type Entering = (reading: Reading, readings: readonly Reading[]) => Entered;

/** How the readings of a row were entered; each is looked at once, which is most of the work. */
export function enteringOnce(ground: Ground, side: 1 | -1, fixes: readonly Place[]): Entering {
  const seen = new Map<Reading, Entered>();
  return (reading, readings) => {
    const entered = seen.get(reading) ?? withEntry(ground, side, reading, readings, fixes);
    seen.set(reading, entered);
    return entered;
  };
}

function withEntry(
  ground: Ground,
  side: 1 | -1,
  reading: Reading,
  readings: readonly Reading[],
  fixes: readonly Place[],
): Entered {
  const known = fixAndCourse(ground, reading, fixes);
  if (reading.before) return { reading, known };
  const entered =
    reading.sense.first === 0
      ? (parallel(ground, side, reading, known, fixes) ??
        teardrop(ground, side, reading, afterTeardrop(reading, readings), known, fixes))
      : teardrop(ground, side, reading, reading, known, fixes);
  return entered ?? { reading, known };
}

/**
 * The readings, best first, where the fix may be at either end of the row: an entry that only a fix anew shows speaks
 * for its end too.
 */
export function byEntry(
  ground: Ground,
  readings: readonly Reading[],
  entering: Entering,
): readonly Reading[] {
  const [best] = readings;
  const other = best && readings.find((r) => parity(r) !== parity(best));
  if (
    !best ||
    !other ||
    best.score - other.score > CLOSE ||
    other.inbound.length === 0 ||
    best.inbound.length === 0
  )
    return readings;
  const anew = [best, other].map((reading) => {
    const { reading: entered } = entering(reading, readings);
    return entered.before && !reading.before
      ? {
          ...entered,
          score: reading.score + ENTRY_WORTH - noEntryCost(ground, reading.turns, reading.sense.first),
        }
      : reading;
  });
  const rest = readings.filter((r) => r !== best && r !== other);
  return [...anew, ...rest].sort((a, b) => b.score - a.score);
}

/** Which turns of the row begin over the fix. */
export const parity = ({ sense }: Reading): number => (sense.lead + sense.first) % 2;

/** The same hold, with the turn before it as the one that led inbound from a teardrop. */
const afterTeardrop = ({ sense }: Reading, readings: readonly Reading[]): Reading | undefined =>
  readings.find(
    (other) =>
      sense.lead === 1 &&
      other.sense.lead === 0 &&
      other.sense.first === 1 &&
      other.sense.tail === sense.tail,
  );

/** A teardrop that passed the fix, wherever that is when the pass itself helps to find it; null where none did. */
function teardrop(
  ground: Ground,
  side: 1 | -1,
  reading: Reading,
  whole: Reading | undefined,
  found: FixAndCourse,
  fixes: readonly Place[],
): Entered | null {
  if (!whole) return null;
  const { metres } = ground;
  const legSeconds = outboundSeconds(whole.turns, 1);
  let known = found;
  let passed: UtcMillis | null = null;
  for (let round = 0; ; round++) {
    const before = entryPass(ground, whole.turns[0]!, side, 1, known.course, known.fix, legSeconds);
    if (!before || before.distance > DRIFTED_SECONDS * metres) return null;
    const entered = { ...whole, before, inbound: reading.inbound };
    // the same pass shows the same course again
    if (round === ROUNDS || before.time === passed) {
      if (before.distance > OVER_SECONDS * metres) return null;
      const other = whole !== reading && entryOf(ground, side, entered, known).entry !== "teardrop";
      return other ? null : { reading: entered, known };
    }
    passed = before.time;
    known = fixAndCourse(ground, entered, fixes);
  }
}

function parallel(
  ground: Ground,
  side: 1 | -1,
  reading: Reading,
  known: FixAndCourse,
  fixes: readonly Place[],
): Entered | null {
  const back = turnedBack(ground, side, reading, known.course);
  const enter = (before: Pass): Entered => {
    const entered = { ...reading, before };
    return { reading: entered, known: fixAndCourse(ground, entered, fixes) };
  };
  const before = parallelPass(ground, reading, known.fix, known.course, back);
  if (before) return enter(before);
  const straight = straightBefore(ground, back);
  const course = trackAt(ground, straight) + 180;
  if (reading.inbound.length > 1 || Math.abs(turnFrom(known.course, course)) > OTHER_COURSE) return null;
  const pass = parallelPass(ground, reading, known.fix, course, straight);
  if (!pass) return null;
  const entered = enter(pass);
  const { fix } = entered.known;
  const off = Math.hypot(fix.east - pass.place.east, fix.north - pass.place.north);
  const { metres } = ground;
  return off < OVER_SECONDS * metres && Math.abs(turnFrom(entered.known.course, course)) < ALONG
    ? entered
    : null;
}
