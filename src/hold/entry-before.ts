/** The entry before the first lap, where the reading did not see it at first: laps that drifted put the fix elsewhere. */
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { rateOfBank } from "../wind/index.ts";
import { entryOf } from "./entry.ts";
import { type FixAndCourse, fixAndCourse } from "./fix-and-course.ts";
import type { Ground, Place } from "./ground.ts";
import { entryPass, type Pass, SEEN_SECONDS, trackAt } from "./near-fix.ts";
import { outboundSeconds, type Reading } from "./reading.ts";

/** A parallel entry takes no longer than this, s at rate one; it turns back by more than this, degrees. Chosen. */
const LONGEST_PARALLEL = 360;
const OTHER_WAY = 150;
/** Its outbound leg leads along the reciprocal within this, degrees, once so many seconds of flight from abeam, and begins abeam the fix within so many. Chosen. */
const ALONG = 40;
const BEGINS = 15;
const ABEAM_SECONDS = 25;
/** ... and within so many where it was back so soon that nothing else was flown between, s at rate one. Tuned on simulation, seeds 1 to 1000: laps that drift put their fix aside. */
const DRIFTED_SECONDS = 50;
const BACK_SOON = 180;
const RATE_ONE = 3;
const USUAL_BANK = 25;
/** A course found anew with the entry is right where that passed the fix within so many seconds of flight, after so many rounds. Chosen. */
const OVER_SECONDS = 5;
const ROUNDS = 3;
/** Of a single lap the course may be that of a cut: the entry's outbound leg shows it better where both are no farther apart, degrees. Chosen: two cuts of 30 and a correction. */
const OTHER_COURSE = 75;
/** Straight flight turns by less than this in four seconds, degrees. Chosen. */
const STRAIGHT = 4;

export interface Entered {
  readonly reading: Reading;
  readonly known: FixAndCourse;
}

/** The reading with its entry, and the fix and course that both show. `readings`: of the same row. */
export function withEntry(
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
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const legSeconds = outboundSeconds(whole.turns, 1);
  let known = found;
  for (let round = 0; ; round++) {
    const before = entryPass(ground, whole.turns[0]!, side, 1, known.course, known.fix, legSeconds);
    if (!before || before.distance > DRIFTED_SECONDS * metres) return null;
    const entered = { ...whole, before, inbound: reading.inbound };
    if (round === ROUNDS) {
      if (before.distance > OVER_SECONDS * metres) return null;
      const other = whole !== reading && entryOf(ground, side, entered, known).entry !== "teardrop";
      return other ? null : { reading: entered, known };
    }
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
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  return off < OVER_SECONDS * metres && Math.abs(turnFrom(entered.known.course, course)) < ALONG
    ? entered
    : null;
}

const slowness = ({ trueAirspeed }: Ground): number =>
  RATE_ONE / Math.min(RATE_ONE, rateOfBank(USUAL_BANK, trueAirspeed));

/** The track along the reciprocal, but for `ALONG`. */
const leadsOut = (ground: Ground, course: TrueDegrees, t: UtcMillis): boolean =>
  Math.abs(turnFrom(course + 180, trackAt(ground, t))) < ALONG;

/** When a parallel entry may be looked for at the earliest. */
const earliest = (ground: Ground, { turns }: Reading): UtcMillis =>
  Math.max(
    ground.times[0] + SEEN_SECONDS * 1000,
    turns[0]!.start - LONGEST_PARALLEL * slowness(ground) * 1000,
  );

/** The last time before the first turn from which on half a circle was turned the other way. */
function turnedBack(ground: Ground, side: 1 | -1, reading: Reading, course: TrueDegrees): UtcMillis {
  const { start, before } = reading.turns[0]!;
  const until = earliest(ground, reading);
  const turned = (t: UtcMillis) => side * (before - ground.headingAt(t));
  let t = start - 30_000;
  while (
    t > until &&
    (turned(t) > -OTHER_WAY || (turned(t) > -2 * OTHER_WAY && !leadsOut(ground, course, t)))
  )
    t -= 1000;
  return t;
}

/** The last moment of straight flight until then. */
function straightBefore(ground: Ground, until: UtcMillis): UtcMillis {
  const first = ground.times[0] + SEEN_SECONDS * 1000;
  let t = until;
  while (t > first && Math.abs(ground.headingAt(t) - ground.headingAt(t - 4000)) > STRAIGHT) t -= 1000;
  return t - 2000;
}

/**
 * Over or abeam the fix before a parallel entry that drifted: a turn of half a circle the other way before the first
 * turn, and before that a leg along the reciprocal of the course that began abeam the fix. Null where there was none.
 */
function parallelPass(
  ground: Ground,
  reading: Reading,
  fix: Place,
  course: TrueDegrees,
  back: UtcMillis,
): Pass | null {
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const until = earliest(ground, reading);
  const [e, n] = [sinDeg(course), cosDeg(course)];
  const soon = reading.turns[0]!.start - back < BACK_SOON * slowness(ground) * 1000;
  const within = soon ? DRIFTED_SECONDS : ABEAM_SECONDS;
  for (let t = back; t > until; t -= 1000) {
    const place = ground.place(t);
    const along = ((place.east - fix.east) * e + (place.north - fix.north) * n) / metres;
    if (along > 0) {
      const distance = Math.hypot(place.east - fix.east, place.north - fix.north);
      return distance < within * metres ? { time: t, place, distance } : null;
    }
    if (along < -BEGINS && !leadsOut(ground, course, t)) return null;
  }
  return null;
}
