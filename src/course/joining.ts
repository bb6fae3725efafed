/** The turn onto a course, and the cut that led to it, which may lie before what was matched. */
import type { CourseExercise } from "../brief/brief.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Share } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { findJoining, type Intercept, type Joining, measureIntercept, withCut } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { nearStation } from "./judged.ts";
import { type CoursePath, measureRows, type Rows } from "./path.ts";

/** A leg is crossed where it begins, within this: the turn at its fix came late. Chosen: three turn radii of a light aircraft. */
const AT_START: NauticalMiles = 2;
/** Rolled out past the course, or parallel to it and short of it, by this much: late or early. Tuned: turns timed to 3 s end within 0.12. */
const MISTURNED: NauticalMiles = 0.15;

/** Null where there was no cut, or no turn that ended near the course. `established`: the cut that ended in being so. */
export function courseJoining(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  established: CourseCut | null,
): Joining | null {
  const rows = motion && rowsFromBefore(exercise, path, span, motion);
  return rows && findJoining(rows, established, () => MISTURNED);
}

/**
 * The cut of an aircraft that flew through its course before what was matched, and came back from the other side; null
 * where there was none. A turn over the station that the course leads from is none: that is where it is to be made.
 * Who went past full scale on the other side may have crossed it on the way to somewhere else, unless it was where a leg begins.
 *
 * `established`: the row of the match from which it was.
 */
export function flownThrough(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  established: number | null,
): CourseCut | null {
  if (!motion || established === null) return null;
  const rows = rowsFromBefore(exercise, path, span, motion);
  const intercept = cutOnto(exercise, rows, established + span.start - rows.pathStart);
  if (!intercept || !(intercept.overshootNm >= MISTURNED)) return null;
  const side = Math.sign(intercept.startCrossTrackNm);
  const startMs = Date.parse(intercept.startUtc);
  let crossed = 0;
  while (
    crossed < rows.length &&
    !(rows.timeMs[crossed]! > startMs && rows.crossTrackNm[crossed]! * side <= 0)
  )
    crossed++;
  if (crossed === rows.length) return null;
  const { form, scale } = exercise;
  if (scale.kind === "angular" && rows.distanceToFixNm[crossed]! <= NEAR_STATION) return null;
  const atStart = form !== "to" && Math.abs(rows.alongNm[crossed]!) <= AT_START;
  const past = rows.needle.subarray(crossed, established + span.start - rows.pathStart);
  return atStart || past.every((needle) => Math.abs(needle) <= 1) ? intercept : null;
}

/** A cut, with the needle where it went farthest past; null within a mile of a station. */
export type CourseCut = Omit<Intercept, "overshootNeedle"> & { readonly overshootNeedle: Share | null };

/** The cut that ended in being established at a row; null where there was none. */
export function cutOnto(exercise: CourseExercise, rows: Rows, established: number | null): CourseCut | null {
  const cut = measureIntercept(rows, established);
  if (!cut) return null;
  const farthest = firstAtOrAfter(rows.timeMs, Date.parse(cut.overshootUtc));
  return nearStation(exercise, rows, Math.min(farthest, rows.length - 1))
    ? { ...cut, overshootNeedle: null }
    : cut;
}

/** The track of a cut stays within this until the turn onto the course begins. Chosen: the limit at which a track counts as off. */
const HELD: AngleSize = 5;

/** How far past the course the turn onto it began, of a cut that went past; null where it began before the course, or not clearly past it, or nobody saw it. */
export function turnBeganPast(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  cut: CourseCut,
): NauticalMiles | null {
  if (!motion || cut.silentS !== undefined) return null;
  const rows = rowsFromBefore(exercise, path, span, motion);
  let row = firstAtOrAfter(rows.timeMs, Date.parse(cut.overshootUtc));
  if (row >= rows.length) return null;
  const begun = Date.parse(cut.startUtc);
  const turned = (i: number) => Math.abs(rows.trackErrorDeg[i]! - cut.angleDeg) > HELD;
  while (row > 0 && rows.timeMs[row]! > begun && turned(row)) {
    if (rows.gapBefore[row]) return null;
    row--;
  }
  const past = -rows.crossTrackNm[row]! * Math.sign(cut.startCrossTrackNm);
  return !turned(row) && past >= MISTURNED ? past : null;
}

function rowsFromBefore(exercise: CourseExercise, path: CoursePath, span: Span, motion: Motion): Rows {
  return measureRows(exercise, path, withCut(motion, span), motion, null);
}
