/** Which part of an exercise is judged: from established on the course to the mile before the station. */
import type { CourseExercise } from "../brief/brief.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { ESTABLISHED_NEEDLE, ESTABLISHED_TRACK, establishedRow } from "../track/index.ts";
import { isFitted } from "./fit.ts";
import { letGoRow } from "./from-the-start.ts";
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

/** Without times: the way ahead of each row against the course, right positive, and the row that it was taken to. NaN where the rows end. */
function waysAhead({ length, alongNm, crossTrackNm }: Rows): { error: Float64Array; to: Int32Array } {
  const error = new Float64Array(length).fill(Number.NaN);
  const to = new Int32Array(length);
  for (let i = 0, ahead = 0; i < length; i++) {
    const along = (k: number) => alongNm[k]! - alongNm[i]!;
    const across = (k: number) => crossTrackNm[k]! - crossTrackNm[i]!;
    ahead = Math.max(ahead, i);
    while (ahead < length && Math.hypot(along(ahead), across(ahead)) < DIRECTION_OVER) ahead++;
    if (ahead === length) break;
    error[i] = Math.atan2(across(ahead), along(ahead)) * DEGREES_PER_RADIAN;
    to[i] = ahead;
  }
  return { error, to };
}

/** Without times: from the first row whose way ahead runs along the course, needle within half scale all along it. */
function establishedByGeometry(rows: Rows, { error, to }: ReturnType<typeof waysAhead>): number | null {
  for (let i = 0; i < rows.length; i++) {
    if (!(Math.abs(error[i]!) <= ESTABLISHED_TRACK)) continue;
    if (rows.needle.subarray(i, to[i]! + 1).every((needle) => Math.abs(needle) <= ESTABLISHED_NEEDLE))
      return i;
  }
  return null;
}

/** Settled on the course, or on it before that and let go: whichever came first. */
function establishedAtRow(exercise: CourseExercise, rows: Rows): number | null {
  const ways = rows.timed ? null : waysAhead(rows);
  const settled = ways ? establishedByGeometry(rows, ways) : establishedRow(rows);
  const error = ways?.error ?? rows.trackErrorDeg;
  const letGo = letGoRow(exercise, rows, (i) => error[i]!);
  return settled === null || letGo === null ? (settled ?? letGo) : Math.min(settled, letGo);
}

/** Too near to its station, or past it, for an angular needle to be judged. */
export const nearStation = ({ scale }: CourseExercise, rows: Rows, i: number): boolean =>
  scale.kind === "angular" && (rows.distanceToFixNm[i]! < NEAR_STATION || rows.pastFix[i] === 1);

/** The judged rows [start, end) of an exercise; at least two. */
export function judgedSpan(exercise: CourseExercise, rows: Rows): Judged {
  // a line fitted to what was flown has no joining: all of it is judged
  const establishedAt = isFitted(exercise) ? null : establishedAtRow(exercise, rows);
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
