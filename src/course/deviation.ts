/** Deviation facts of the judged rows: distance off course, needle, track angle error, height. */
import type { CourseExercise } from "../brief/brief.ts";
import { acrossAt } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import {
  knownAtEnds,
  type SilentEdge,
  SPOKEN,
  SPOKEN_FT,
  strayedAcross,
  strayedInHeight,
  type Unseen,
  type UnseenRecord,
  unseenHalfRange,
  unseenOf,
  unseenRecord,
} from "../quantity/unseen.ts";
import {
  distanceFlown,
  intervals,
  median,
  rowOfLargest,
  shareBeyond,
  type WeighedRows,
  weigh,
  Z95,
} from "../quantity/weigh.ts";
import type { NeedleScale } from "../standard/needle.ts";
import { altimeterDoubt95, HEIGHT_CHANGE_95, heightHeld, heightReached } from "../track/index.ts";
import { needleAtTheMile } from "./at-the-mile.ts";
import type { CourseFacts } from "./facts.ts";
import type { Rows } from "./path.ts";

type Timed = Pick<Rows, "timed" | "timeMs">;

export const utcAt = (rows: Timed, row: number): string | null =>
  rows.timed ? utcText(rows.timeMs[row]!) : null;

export function judgedFacts(
  rows: WeighedRows,
  judged: { readonly span: Span; readonly begins: string; readonly ends: string },
  weights: Float64Array,
): CourseFacts["judged"] {
  const { start, end } = judged.span;
  return {
    fromUtc: utcAt(rows, start),
    toUtc: utcAt(rows, end - 1),
    seconds: rows.timed ? weights.reduce((a, b) => a + b, 0) : null,
    distanceNm: distanceFlown(rows, judged.span, false),
    shareOf: rows.timed ? "time" : "distance",
    begins: judged.begins,
    ends: judged.ends,
  };
}

/** Distances across a line, or off an arc, between the rows of a span. */
export function unseenAcross(
  rows: Parameters<typeof unseenOf>[0] & Pick<Rows, "trackErrorDeg">,
  span: Span,
  column: Float64Array,
  edges: readonly SilentEdge[],
): UnseenRecord | null {
  const seen = column[rowOfLargest(column, span)]!;
  const strayed: Stray = (speed, seconds, row) =>
    strayedAcross(speed, seconds, knownAtEnds(rows.trackErrorDeg, row));
  return unseenRecord(unseenOf(rows, span, column, strayed, edges), seen, SPOKEN);
}

type Stray = Parameters<typeof unseenOf>[3];

export function crossTrackFacts(
  rows: Rows,
  span: Span,
  weights: Float64Array,
  edges: readonly SilentEdge[],
): CourseFacts["crossTrack"] {
  const worst = rowOfLargest(rows.crossTrackNm, span);
  const { mean, rms, weight } = weigh(rows.crossTrackNm, span, weights);
  const known = weight > 0;
  return {
    maxNm: rows.crossTrackNm[worst]!,
    maxUtc: utcAt(rows, worst),
    // all of the span over gaps: nothing was flown between its rows that could be weighed
    meanNm: known ? mean : rows.crossTrackNm[worst]!,
    rmsNm: known ? rms : Math.abs(rows.crossTrackNm[worst]!),
    doubt95Nm: Z95 * median(rows.positionSdNm.subarray(span.start, span.end)),
    ...unseenPart(unseenAcross(rows, span, rows.crossTrackNm, edges)),
  };
}

export function needleFacts(
  scale: NeedleScale,
  rows: Rows,
  span: Span,
  weights: Float64Array,
  edges: readonly SilentEdge[],
): CourseFacts["needle"] {
  const worst = rowOfLargest(rows.needle, span);
  const scaleAt = (row: number) => acrossAt(scale, 1, rows.distanceToFixNm[Math.max(row, span.start)]!);
  const unseen = unseenOf(
    rows,
    span,
    rows.needle,
    (speed, seconds, row) =>
      strayedAcross(speed, seconds, knownAtEnds(rows.trackErrorDeg, row)) /
      ((scaleAt(row - 1) + scaleAt(row)) / 2),
    edges,
  );
  const beyond = (limit: number) => shareBeyond(rows.needle, span, weights, limit);
  const fullScale = acrossAt(scale, 1, rows.distanceToFixNm[worst]!);
  const { mean, weight } = weigh(rows.needle, span, weights);
  return {
    max: rows.needle[worst]!,
    maxUtc: utcAt(rows, worst),
    mean: weight > 0 ? mean : rows.needle[worst]!,
    // at the station an angular needle has no scale left: its doubt is the whole of it
    doubt95: fullScale > 0 ? Math.min(10, (Z95 * rows.positionSdNm[worst]!) / fullScale) : 10,
    ...unseenPart(unseenRecord(unseen, rows.needle[worst]!, SPOKEN, needleAtTheMile(scale, rows, span))),
    beyondQuarter: beyond(0.25),
    beyondHalf: beyond(0.5),
    beyondThreeQuarter: beyond(0.75),
    beyondFull: beyond(1),
  };
}

export function trackFacts(
  rows: Timed & Pick<Rows, "trackErrorDeg" | "trackSdDeg">,
  span: Span,
  weights: Float64Array,
): CourseFacts["trackAngleError"] {
  if (!rows.timed) return null;
  const worst = rowOfLargest(rows.trackErrorDeg, span);
  const { mean, rms, weight } = weigh(rows.trackErrorDeg, span, weights);
  if (worst < 0 || !(weight > 0)) return null;
  return {
    meanDeg: mean,
    rmsDeg: rms,
    maxDeg: rows.trackErrorDeg[worst]!,
    maxUtc: utcText(rows.timeMs[worst]!),
    doubt95Deg: Z95 * median(rows.trackSdDeg.subarray(span.start, span.end)),
  };
}

/** Without times, seconds are those of 100 kt. Common practice for training aircraft, no source. */
const SECONDS_A_MILE = 36;

const secondsTo = ({ timeMs }: WeighedRows, row: number): number => (timeMs[row]! - timeMs[row - 1]!) / 1000;

/** Seconds of the rows of a span from its first one, at the rows' own places. */
function clockOf(rows: WeighedRows, { start, end }: Span): Float64Array {
  const clock = new Float64Array(end);
  for (let i = start + 1; i < end; i++) {
    const step = rows.timed
      ? secondsTo(rows, i)
      : distanceFlown(rows, { start: i - 1, end: i + 1 }, true) * SECONDS_A_MILE;
    clock[i] = clock[i - 1]! + step;
  }
  return clock;
}

/** Heights as logged; where it began on the way to a briefed one, from where the height that was held was come to; null where the log has none. The worst is farthest from the target, or from the mean. */
export function altitudeFacts(
  { altitude: target }: Pick<CourseExercise, "altitude">,
  rows: Parameters<typeof unseenOf>[0] & Pick<Rows, "altitudeFt">,
  judged: Span,
  edges: readonly SilentEdge[],
): CourseFacts["altitude"] {
  const held = heightHeld(clockOf(rows, judged), rows.altitudeFt, judged, target);
  const span = { start: Math.min(held.row, judged.end - 2), end: judged.end };
  const { mean, weight } = weigh(rows.altitudeFt, span, intervals(rows, span));
  if (!(weight > 0)) return null;
  const known = rows.altitudeFt.subarray(span.start, span.end).filter(Number.isFinite);
  const worst = rowOfLargest(rows.altitudeFt, span, target ?? mean);
  const lowest = known.reduce((a, b) => Math.min(a, b));
  const highest = known.reduce((a, b) => Math.max(a, b));
  const strayed = (_: number, seconds: number) => strayedInHeight(seconds);
  const silentBefore = span.start > judged.start && rows.gapBefore[span.start] === 1;
  const beside = [
    ...edges.filter(({ row }) => row >= span.start),
    ...(silentBefore ? [{ row: span.start, seconds: secondsTo(rows, span.start) }] : []),
  ];
  const unseen = unseenOf(rows, span, rows.altitudeFt, strayed, beside);
  const range = unseenHalfRange(unseen, lowest, highest, SPOKEN_FT);
  const shifted: Unseen | null =
    unseen && target !== null ? { ...unseen, high: unseen.high - target, low: unseen.low - target } : null;
  const offTarget = unseenRecord(shifted, rows.altitudeFt[worst]! - (target ?? mean), SPOKEN_FT);
  return {
    targetFt: target,
    meanFt: mean,
    lowestFt: lowest,
    highestFt: highest,
    change95Ft: HEIGHT_CHANGE_95,
    worstFt: rows.altitudeFt[worst]!,
    altimeter95Ft: altimeterDoubt95(rows.altitudeFt[worst]!),
    worstUtc: utcAt(rows, worst),
    ...(held.allAlong ? { onPurpose: held.allAlong } : {}),
    ...(held.onWay ? { reached: heightReached(held.onWay, utcAt(rows, span.start)) } : {}),
    ...(range ? { unseenRange: range } : {}),
    ...(offTarget ? { unseenTarget: offTarget } : {}),
  };
}

const unseenPart = (unseen: UnseenRecord | null) => (unseen ? { unseen } : {});
