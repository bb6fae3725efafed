/** Where a course was left by a turn aside after which the track did not come back: what was judged ends there, and whether it was meant is told only where that is clear. */
import type { CourseExercise } from "../brief/brief.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, TurnDegrees } from "../quantity/units.ts";
import { ESTABLISHED_NEEDLE, establishedRow } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { CourseFacts } from "./facts.ts";
import { type CoursePath, measureRows } from "./path.ts";

/** A track that stands off by so much is no wander. Chosen: half as much again as the limit of being established. */
const ASIDE: AngleSize = 15;
/** On the course before that: its track within this. Chosen: hand-flown wander is less. */
const ALONG: AngleSize = 8;
/** The turn between is over in so long; what takes longer is a drift. Chosen: 30° at half the standard rate. */
const TURN: Seconds = 20;
/** The course was flown for so far before it, else nothing is left to judge. As of runs that are matched. */
const FLOWN: NauticalMiles = 1;
/** Clearly meant: the track stood off by so much, or the heading: corrections are of 30° at most in common practice. As of turns that end a run. */
const MEANT_TRACK: AngleSize = 25;
const MEANT_HEADING: AngleSize = 40;
/** Flown on from the turn for so far where it was clearly meant, and where it may be a drift. Chosen: who drifts has seen it in the second. */
const WAY_ON: { readonly meant: NauticalMiles; readonly maybe: NauticalMiles } = { meant: 0.5, maybe: 1 };
/** A heading so near to the course lets the wind have its way, or corrects the wrong way: a fault, and no turn aside. Chosen: less than the 30° of a usual cut. */
const LET_GO: AngleSize = 20;
/** Who comes back to the course along it within this had not left it. Chosen. */
const COMES_BACK: Seconds = 600;

export interface TurnedAside {
  /** What was flown before the turn. */
  readonly span: Span;
  /** Null where it was clearly meant. */
  readonly maybe: NonNullable<CourseFacts["turnedAside"]> | null;
}

/** Null where no such turn ends what was flown. In a time that the brief gives all is asked for. */
export function turnedAside(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  wind: WindEstimate | null,
): TurnedAside | null {
  if (!motion || exercise.between) return null;
  const rows = measureRows(exercise, path, span, motion, wind);
  const error = (i: number): TurnDegrees => rows.trackErrorDeg[i]!;
  // the next turn may have begun where the match ends; where the log ends, nobody saw what came of it
  let end = rows.length;
  const ended = (i: number) => (rows.timeMs[rows.length - 1]! - rows.timeMs[i]!) / 1000;
  while (
    span.end < motion.time.length &&
    end > 1 &&
    ended(end - 1) < TURN &&
    Math.abs(error(end - 1)) < ASIDE
  )
    end--;
  const side = Math.sign(error(end - 1));
  let aside = end;
  while (aside > 0 && error(aside - 1) * side >= ASIDE && rows.crossTrackNm[aside - 1]! * side > 0) aside--;
  if (aside === end || aside === 0) return null;
  let turn = aside;
  while (turn > 0 && error(turn) * side > ALONG / 2) turn--;
  const wasOn =
    Math.abs(error(turn)) <= ALONG &&
    Math.abs(rows.needle[turn]!) <= ESTABLISHED_NEEDLE &&
    rows.timeMs[aside]! - rows.timeMs[turn]! <= TURN * 1000;
  if (!wasOn || Math.abs(rows.alongNm[turn]! - rows.alongNm[0]!) < FLOWN) return null;
  const stood = { start: aside, end };
  const off = meanOf(stood, error) * side;
  const heading = meanOf(stood, (i) => turnFrom(rows.courseAtFootDeg[i]!, rows.headingDeg[i]!)) * side;
  if (Math.abs(heading) <= LET_GO) return null;
  const meant = off >= MEANT_TRACK || heading >= MEANT_HEADING;
  const last = end - 1;
  const wayOn = Math.hypot(
    rows.alongNm[last]! - rows.alongNm[turn]!,
    rows.crossTrackNm[last]! - rows.crossTrackNm[turn]!,
  );
  if (wayOn < (meant ? WAY_ON.meant : WAY_ON.maybe) || cameBack(exercise, path, span, motion)) return null;
  const maybe = {
    utc: utcText(rows.timeMs[turn]!),
    trackErrorDeg: off * side,
    farthestNm: rows.crossTrackNm[last]!,
    farthestUtc: utcText(rows.timeMs[last]!),
  };
  return { span: { start: span.start, end: span.start + turn + 1 }, maybe: meant ? null : maybe };
}

function meanOf({ start, end }: Span, valueAt: (row: number) => number): number {
  let sum = 0;
  for (let i = start; i < end; i++) sum += valueAt(i);
  return sum / (end - start);
}

/** Whether it was established again after what was matched; one that comes back the other way has turned round, whatever the wind carried it across meanwhile. */
function cameBack(exercise: CourseExercise, path: CoursePath, { end }: Span, motion: Motion): boolean {
  const last = end - 1;
  let until = end;
  while (until < motion.time.length && motion.time[until]! - motion.time[last]! <= COMES_BACK * 1000) until++;
  if (until - last < 2) return false;
  const after = measureRows(exercise, path, { start: last, end: until }, motion, null);
  const turnedRound = after.trackErrorDeg.findIndex((error) => Math.abs(error) > 90);
  const before = turnedRound < 0 ? after.length : turnedRound;
  if (before < 2) return false;
  const rows = measureRows(exercise, path, { start: last, end: last + before }, motion, null);
  return establishedRow(rows) !== null;
}

/** Told where it may have been a drift: what came after it is not judged. */
export function asideFindings(aside: CourseFacts["turnedAside"]): Finding[] {
  if (!aside) return [];
  const { utc, trackErrorDeg, farthestNm, farthestUtc } = aside;
  return [
    {
      code: "turned-aside",
      facts: { degrees: Math.abs(trackErrorDeg), side: trackErrorDeg > 0 ? "right" : "left", farthestNm },
      evidence: { fromUtc: utc, toUtc: farthestUtc },
    },
  ];
}
