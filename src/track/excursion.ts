/** The leading indicator: the track leaves its line (A), the needle tells (B), the pilot corrects (C); of a course, an arc or a final alike. */
import { direction, turnFrom } from "../quantity/angle.ts";
import type { ExcursionRecord } from "../quantity/excursion-record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { NauticalMiles, Share } from "../quantity/units.ts";
import { intervals, type WeighedRows, weigh } from "../quantity/weigh.ts";
import type { AgainstCourse } from "./against-course.ts";
import { correctionRow } from "./first-correction.ts";

/** What is read of rows to tell when they left their line; of an arc `turnRate` is that against its tangent. */
export interface AlongLine extends AgainstCourse, WeighedRows {
  /** Direction of the line where the aircraft is. */
  readonly courseAtFootDeg: Float64Array;
  /** Standard deviation of the track angle. */
  readonly trackSdDeg: Float64Array;
  /** From the line to full deflection. */
  readonly fullScaleNm: Float64Array;
}

/** The needle tells from here. Common practice, no source. */
export const QUARTER: Share = 0.25;
/** On course for practical purposes: a tenth of full scale, held between these. Tuned on wander of 2 degrees over 20 s. */
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
export function onCourse({ fullScaleNm }: AlongLine, i: number): NauticalMiles {
  const strip = ON_COURSE * fullScaleNm[i]!;
  return Math.min(ON_COURSE_MOST, Math.max(ON_COURSE_LEAST, strip));
}

/** From A at a row, by way of a row that is far off, to back on course or the end of what is judged. */
export function excursionFrom(
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
