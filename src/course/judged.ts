/** Which part of an exercise is judged: from established on the course to the mile before the station. */
import type { CourseExercise } from "../brief/brief.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { ESTABLISHED_NEEDLE, ESTABLISHED_TRACK, establishedRow } from "../track/index.ts";
import { isFitted } from "./fit.ts";
import type { Rows } from "./path.ts";

export interface Judged {
  readonly span: Span;
  readonly begins: "established" | "start-of-match" | "near-station";
  readonly ends: "end-of-match" | "near-station";
  /** First row established on the course; null where that never was. Without times, by the way flown. */
  readonly establishedAt: number | null;
  /** Nothing was left beyond the mile about the station: all rows are judged. */
  readonly allNearStation: boolean;
}

/** Without times a direction is taken over this distance: long against the noise of a position, short against a course. Tuned. */
const DIRECTION_OVER: NauticalMiles = 0.3;

/** Without times: from the first row whose way ahead runs along the course, needle within half scale all along it. */
function establishedByGeometry(rows: Rows): number | null {
  let ahead = 0;
  for (let i = 0; i < rows.length; i++) {
    const along = (k: number) => rows.alongNm[k]! - rows.alongNm[i]!;
    const across = (k: number) => rows.crossTrackNm[k]! - rows.crossTrackNm[i]!;
    ahead = Math.max(ahead, i);
    while (ahead < rows.length && Math.hypot(along(ahead), across(ahead)) < DIRECTION_OVER) ahead++;
    if (ahead === rows.length) return null;
    const error = Math.atan2(across(ahead), along(ahead)) * DEGREES_PER_RADIAN;
    if (Math.abs(error) > ESTABLISHED_TRACK) continue;
    if (rows.needle.subarray(i, ahead + 1).every((needle) => Math.abs(needle) <= ESTABLISHED_NEEDLE))
      return i;
  }
  return null;
}

const establishedAtRow = (rows: Rows): number | null =>
  rows.timed ? establishedRow(rows) : establishedByGeometry(rows);

/** Too near to its station, or past it, for an angular needle to be judged. */
export const nearStation = ({ scale }: CourseExercise, rows: Rows, i: number): boolean =>
  scale.kind === "angular" && (rows.distanceToFixNm[i]! < NEAR_STATION || rows.pastFix[i] === 1);

/** The judged rows [start, end) of an exercise; at least two. */
export function judgedSpan(exercise: CourseExercise, rows: Rows): Judged {
  // a line fitted to what was flown has no joining: all of it is judged
  const establishedAt = isFitted(exercise) ? null : establishedAtRow(rows);
  let start = establishedAt ?? 0;
  let end = rows.length;
  let begins: Judged["begins"] = establishedAt === null ? "start-of-match" : "established";
  let ends: Judged["ends"] = "end-of-match";
  const whole = { span: { start, end }, begins, ends, establishedAt };
  if (exercise.scale.kind === "angular") {
    const near = (i: number) => nearStation(exercise, rows, i);
    while (start < rows.length && near(start)) {
      start++;
      begins = "near-station";
    }
    end = start;
    while (end < rows.length && !near(end)) end++;
    if (end < rows.length) ends = "near-station";
  }
  if (end - start < 2) {
    const from = Math.min(whole.span.start, rows.length - 2);
    return { ...whole, span: { start: from, end: rows.length }, allNearStation: true };
  }
  return { span: { start, end }, begins, ends, establishedAt, allNearStation: false };
}
