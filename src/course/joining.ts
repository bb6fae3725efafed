/** How the turn onto a course ended: on it, past it, or short of it, and on which track. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import { ESTABLISHED_NEEDLE, type Intercept, measureIntercept, steadyFrom } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { CourseFacts } from "./facts.ts";
import { type CoursePath, measureRows, type Rows } from "./path.ts";

/** The turn may lie before what was matched, by so much. Chosen: a cut and its turn take less. */
const LOOK_BACK: Seconds = 180;
/** Near the course and nearly along it, for so long: the turn onto it is over, however it ended. Tuned: a bad roll-out is off by less. */
const NEARLY_ALONG: AngleSize = 25;
const FOR: Seconds = 10;
/** Farther off than this, or come back from on such a cut, the aircraft was turned away on purpose. Chosen: less than a usual cut of 30. */
const ON_PURPOSE: AngleSize = 20;
/** The track after the roll-out is its mean over this. Chosen: half a wander. */
const TRACK_OVER: Seconds = 10;
/** Rolled out past the course, or parallel to it and short of it, by this much: late or early. Tuned: turns timed to 3 s end within 0.12. */
const MISTURNED: NauticalMiles = 0.15;
/** Still closing by more than this, the aircraft is on its way onto the course. Tuned: twice the wander. */
const CLOSING: AngleSize = 4;

export interface Joining {
  /** Of the roll-out. */
  readonly time: UtcMillis;
  /** There, right positive. */
  readonly crossTrackNm: NauticalMiles;
  /** Mean after it, track less course, right positive. */
  readonly trackErrorDeg: TurnDegrees;
  /** Null: in time. */
  readonly turned: "turned-late" | "turned-early" | null;
}

/** Null where there was no cut, or no turn that ended near the course. `established`: the cut that ended in being so. */
export function findJoining(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  established: Intercept | null,
): Joining | null {
  if (!motion) return null;
  let start = span.start;
  const until = motion.time[span.start]! - LOOK_BACK * 1000;
  const flown = motion.spans.find((s) => s.start <= span.start && span.start < s.end);
  while (start > (flown?.start ?? span.start) && motion.time[start - 1]! >= until) start--;
  const rows = measureRows(exercise, path, { start, end: span.end }, motion, null);
  const intercept = measureIntercept(rows, arrivedRow(rows));
  const joining = intercept && rollOut(rows, intercept);
  const cutAgain =
    joining &&
    established &&
    Date.parse(established.startUtc) > joining.time &&
    Math.abs(established.angleDeg) > ON_PURPOSE;
  return cutAgain ? null : joining;
}

export function joiningFacts(joining: Joining | null): CourseFacts["joining"] {
  if (!joining) return null;
  const { time, crossTrackNm, trackErrorDeg, turned } = joining;
  const how = turned === null ? "in-time" : turned === "turned-late" ? "late" : "early";
  return { rolledOutUtc: utcText(time), crossTrackNm, trackErrorDeg, turned: how };
}

/** The first row from which the aircraft keeps near the course, however unsteadily; null where it never does. */
export function arrivedRow(rows: Rows): number | null {
  let since = -1;
  for (let i = 0; i < rows.length; i++) {
    const near =
      Math.abs(rows.needle[i]!) <= ESTABLISHED_NEEDLE && Math.abs(rows.trackErrorDeg[i]!) <= NEARLY_ALONG;
    if (!near) since = -1;
    else {
      if (since < 0 || rows.gapBefore[i]) since = i;
      if (rows.timeMs[i]! - rows.timeMs[since]! >= FOR * 1000) return since;
    }
  }
  return null;
}

function rollOut(rows: Rows, intercept: Intercept): Joining | null {
  const startMs = Date.parse(intercept.startUtc);
  const side = Math.sign(intercept.startCrossTrackNm);
  const cut = Math.abs(intercept.angleDeg);
  for (let i = 1; i < rows.length; i++) {
    if (rows.timeMs[i]! <= startMs) continue;
    if (rows.gapBefore[i]) return null;
    const toward = -rows.trackErrorDeg[i]! * side;
    if (toward > cut / 2 || !steadyFrom(rows, i)) continue;
    const trackErrorDeg = meanOver(rows, i);
    if (Math.abs(trackErrorDeg) > ON_PURPOSE) return null;
    const past = -rows.crossTrackNm[i]! * side;
    const closing = -trackErrorDeg * side;
    const early = past <= -MISTURNED && closing <= CLOSING;
    const turned = past >= MISTURNED ? "turned-late" : early ? "turned-early" : null;
    return { time: rows.timeMs[i]!, crossTrackNm: rows.crossTrackNm[i]!, trackErrorDeg, turned };
  }
  return null;
}

function meanOver(rows: Rows, row: number): TurnDegrees {
  let sum = 0;
  let n = 0;
  for (let i = row; i < rows.length && rows.timeMs[i]! - rows.timeMs[row]! <= TRACK_OVER * 1000; i++) {
    sum += rows.trackErrorDeg[i]!;
    n++;
  }
  return sum / n;
}
