/** The leading indicator: the track leaves its line (A), the needle tells (B), the pilot corrects (C); of a course, an arc or a final alike. */
import { direction, turnFrom } from "../quantity/angle.ts";
import type { ExcursionRecord } from "../quantity/excursion-record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { intervals, type WeighedRows, weigh, Z95 } from "../quantity/weigh.ts";
import type { AgainstCourse } from "./against-course.ts";
import { correctionRow, TRACK_OFF } from "./first-correction.ts";

/** What is read of rows to tell when they left their line; of an arc `turnRate` is that against its tangent. */
export interface AlongLine extends AgainstCourse, WeighedRows {
  /** Direction of the line where the aircraft is. */
  readonly courseAtFootDeg: Float64Array;
  /** Standard deviation of the track angle. */
  readonly trackSdDeg: Float64Array;
  /** From the line to full deflection. */
  readonly fullScaleNm: Float64Array;
}

/** What differs from line to line. */
export interface ExcursionsOf {
  /** The judged rows begin beside a station, where the needle was not judged but the track tells. */
  readonly fromStation?: boolean;
  /** Carried away by this at least where the needle told of it; see `TOLD_LEAST`. */
  readonly toldLeast?: NauticalMiles;
}

/** The needle tells from here. Common practice, no source. */
const QUARTER: Share = 0.25;
/** Shorter lulls do not end a run of track error. Tuned on wander of 2 degrees over 20 s. */
const LULL: Seconds = 15;
/** ... nor longer ones in which the track still led away by this, while its mean from A on stays off. Tuned likewise. */
const STILL_AWAY: AngleSize = 1;
/** Carried away: outward by this, or to a quarter scale. Tuned: five times what wander makes on a course well kept. */
const CARRIED_AWAY: NauticalMiles = 0.1;
/** ... where the needle told of it, by this at least: beside a station a quarter scale is less than wander makes. Tuned likewise. */
const TOLD_LEAST: NauticalMiles = 0.06;
/** On course for practical purposes: a tenth of full scale, held between these. Tuned likewise. */
const ON_COURSE: Share = 0.1;
const ON_COURSE_LEAST: NauticalMiles = 0.02;
const ON_COURSE_MOST: NauticalMiles = 0.08;

/** An excursion with its rows, for what is measured on it. */
export interface ExcursionRows {
  readonly record: ExcursionRecord;
  /** A to C, or to the worst point where no correction came. */
  readonly drifting: Span;
  readonly worst: number;
}

/** Half-width of the strip in which the aircraft counts as on the line. */
function onCourse({ fullScaleNm }: AlongLine, i: number): NauticalMiles {
  const strip = ON_COURSE * fullScaleNm[i]!;
  return Math.min(ON_COURSE_MOST, Math.max(ON_COURSE_LEAST, strip));
}

/** Diverging by more than the threshold (and than its doubt): +1 to the right, -1 to the left, else 0. */
function diverging(rows: AlongLine, i: number): number {
  const error = rows.trackErrorDeg[i]!;
  if (!(Math.abs(error) >= Math.max(TRACK_OFF, Z95 * rows.trackSdDeg[i]!)) || Math.abs(error) > 90) return 0;
  const side = Math.sign(error);
  return rows.crossTrackNm[i]! * side >= -onCourse(rows, i) ? side : 0;
}

/** A run of divergence [start, end): its rows are off to one side, but for lulls. */
function divergingRun(rows: AlongLine, from: number, end: number, side: number): Span {
  let start = from;
  let last = from;
  let sum = rows.trackErrorDeg[from]! * side;
  let lull = 0;
  for (let i = from + 1; i < end; i++) {
    if (rows.gapBefore[i]) break;
    const error = rows.trackErrorDeg[i]! * side;
    sum += error;
    const forGood = sum >= TRACK_OFF * (i - start + 1);
    if (diverging(rows, i) === side) {
      // wander that fell back before the track really left is no beginning
      if (i > last + 1 && !forGood) {
        start = i;
        sum = error;
      }
      last = i;
      lull = 0;
      continue;
    }
    lull += error;
    const stillAway = forGood && lull >= STILL_AWAY * (i - last);
    if (error < -TRACK_OFF) break;
    if (!stillAway && rows.timeMs[i]! - rows.timeMs[last]! > LULL * 1000) break;
  }
  return { start, end: last + 1 };
}

/** Off already where the judged rows begin: the track tells from before, beside a station too, where a needle does not. */
function begunBefore(rows: AlongLine, from: number, side: number): number {
  let start = from;
  for (let i = from - 1; i >= 0 && !rows.gapBefore[i + 1]; i--) {
    const error = rows.trackErrorDeg[i]! * side;
    if (error < -TRACK_OFF || error > 90 || rows.timeMs[start]! - rows.timeMs[i]! > LULL * 1000) break;
    if (error >= TRACK_OFF) start = i;
  }
  return start;
}

/** All excursions of some rows, in flown order. Empty where the log has no times. */
export function findExcursions(
  rows: AlongLine,
  judged: Span,
  { fromStation = false, toldLeast = TOLD_LEAST }: ExcursionsOf = {},
): ExcursionRows[] {
  const found: ExcursionRows[] = [];
  if (!rows.timed) return found;
  let i = judged.start;
  while (i < judged.end) {
    const side = diverging(rows, i);
    if (side === 0) {
      i++;
      continue;
    }
    const begun = fromStation && i === judged.start ? begunBefore(rows, i, side) : i;
    const run = divergingRun(rows, begun, judged.end, side);
    const out = (k: number) => rows.crossTrackNm[k]! * side;
    let far = run.start;
    for (let k = run.start; k < run.end; k++) if (out(k) > out(far)) far = k;
    const told = rows.needle[far]! * side >= QUARTER && rows.needle[run.start]! * side < QUARTER;
    const moved = out(far) - Math.max(0, out(run.start));
    if (moved >= CARRIED_AWAY || (told && moved >= toldLeast)) {
      const excursion = excursionFrom(rows, judged, run.start, far, side);
      found.push(excursion.rows);
      i = Math.max(i + 1, excursion.back, run.end);
    } else i = Math.max(i + 1, run.end);
  }
  return found;
}

/** From A at a row, by way of a row that is far off, to back on course or the end of what is judged. */
function excursionFrom(
  rows: AlongLine,
  judged: Span,
  a: number,
  far: number,
  side: number,
): { rows: ExcursionRows; back: number } {
  const out = (k: number) => rows.crossTrackNm[k]! * side;
  let back = far;
  while (back < judged.end && out(back) > onCourse(rows, back)) back++;
  let worst = a;
  for (let k = a; k < back; k++) if (out(k) > out(worst)) worst = k;
  let left = a;
  while (left < worst && out(left) - out(a) < ON_COURSE_LEAST) left++;
  const turned = correctionRow(rows, { start: a, end: back }, side, left);
  // back on course without a turn that stands out: it turned at the farthest point at the latest
  const last = turned ?? (back < judged.end ? worst : null);
  // what came in a silence, or after one, may have come first in it
  let silent = a + 1;
  while (silent <= back && silent < judged.end && !rows.gapBefore[silent]) silent++;
  const fellSilent = silent <= back && silent < judged.end;
  const seen = turned ?? (last === null ? null : last + 1);
  const unseen = fellSilent && (seen === null || seen >= silent);
  const c = unseen ? null : last;
  const until = unseen ? silent : back;
  let b = -1;
  for (let k = a; k < until && b < 0; k++) if (rows.needle[k]! * side >= QUARTER) b = k;
  const drifted = Math.min(until - 1, c ?? worst) + 1;
  const drifting = { start: a, end: Math.min(judged.end, Math.max(a + 2, drifted)) };
  const weights = intervals(rows, drifting);
  const error = weigh(rows.trackErrorDeg, drifting, weights).mean;
  const course = weigh(unwrapped(rows.courseAtFootDeg, drifting), drifting, weights).mean;
  const utc = (k: number) => utcText(rows.timeMs[k]!);
  const seconds = (k: number) => (rows.timeMs[k]! - rows.timeMs[a]!) / 1000;
  return {
    back,
    rows: {
      drifting,
      worst,
      record: {
        side: side > 0 ? "right" : "left",
        trackOffUtc: utc(a),
        trackErrorDeg: error,
        trackTrueDeg: direction(course + error),
        quarterUtc: b < 0 ? null : utc(b),
        correctedUtc: c === null ? null : utc(c),
        silentS: b < 0 ? null : seconds(b),
        leadS: c === null ? null : seconds(c),
        ...(unseen
          ? { silence: { fromUtc: utc(silent - 1), seconds: seconds(silent) - seconds(silent - 1) } }
          : {}),
        worstCrossTrackNm: rows.crossTrackNm[worst]!,
        worstNeedle: rows.needle[worst]!,
        worstUtc: utc(worst),
      },
    },
  };
}

/** Directions of a span as numbers that do not jump at north. */
function unwrapped(column: Float64Array, span: Span): Float64Array {
  const copy = column.slice();
  for (let i = span.start + 1; i < span.end; i++) {
    copy[i] = copy[i - 1]! + turnFrom(copy[i - 1]!, copy[i]!);
  }
  return copy;
}
