/** Deviations over the judged final: cross-track, and a needle's largest, mean and shares. */
import type { Span } from "../quantity/span.ts";
import {
  knownAtEnds,
  type SilentEdge,
  SPOKEN,
  strayedAcross,
  strayedInHeight,
  unseenOf,
  unseenRecord,
} from "../quantity/unseen.ts";
import { median, rowOfLargest, shareBeyond, weigh, Z95 } from "../quantity/weigh.ts";
import { utcOfRow } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

export function judgedFacts(rows: ApproachRows, { final, begins, ends }: Segments): ApproachFacts["judged"] {
  const last = final.end - 1;
  return {
    fromUtc: utcOfRow(rows, final.start),
    toUtc: utcOfRow(rows, last),
    fromNm: rows.distanceNm[final.start]!,
    toNm: rows.distanceNm[last]!,
    seconds: rows.timed ? (rows.timeMs[last]! - rows.timeMs[final.start]!) / 1000 : null,
    begins,
    ends,
  };
}

export function crossTrackFacts(
  rows: ApproachRows,
  final: Span,
  weights: Float64Array,
): ApproachFacts["crossTrack"] {
  const { mean, rms, weight } = weigh(rows.crossTrackNm, final, weights);
  const worst = rows.crossTrackNm[rowOfLargest(rows.crossTrackNm, final)]!;
  return {
    maxNm: worst,
    meanNm: weight > 0 ? mean : worst,
    rmsNm: weight > 0 ? rms : Math.abs(worst),
    doubt95Nm: Z95 * median(rows.positionSdNm.subarray(final.start, final.end)),
  };
}

/** How far a needle may have strayed over full scale within some seconds, at a row. */
export type NeedleStray = Parameters<typeof unseenOf>[3];

export const sideways =
  ({ fullScaleNm: full, trackErrorDeg }: ApproachRows): NeedleStray =>
  (speed, seconds, row) =>
    strayedAcross(speed, seconds, knownAtEnds(trackErrorDeg, row)) /
    ((full[Math.max(0, row - 1)]! + full[row]!) / 2);

export const upAndDown =
  ({ pathFullScaleFt: full }: ApproachRows): NeedleStray =>
  (_, seconds, row) =>
    strayedInHeight(seconds) / full[row]!;

/** How a needle is bounded where nothing was seen of it. */
interface NeedleOptions {
  /** Of the needle itself; where not given, from the position and the full scale. */
  readonly sd?: Float64Array;
  readonly strayed?: NeedleStray;
  /** Silences beside the rows, while it may have gone on. */
  readonly edges?: readonly SilentEdge[];
}

/** Null where nothing is known. */
export function needleFacts(
  rows: ApproachRows,
  final: Span,
  weights: Float64Array,
  needle: Float64Array,
  { sd, strayed = sideways(rows), edges = [] }: NeedleOptions = {},
): ApproachFacts["needle"] | null {
  const worst = rowOfLargest(needle, final);
  if (worst < 0) return null;
  const { mean, rms, weight } = weigh(needle, final, weights);
  const unseen = unseenRecord(unseenOf(rows, final, needle, strayed, edges), needle[worst]!, SPOKEN);
  const beyond = (limit: number) => shareBeyond(needle, final, weights, limit);
  return {
    max: needle[worst]!,
    maxUtc: utcOfRow(rows, worst),
    maxDistanceNm: rows.distanceNm[worst]!,
    mean: weight > 0 ? mean : needle[worst]!,
    rms: weight > 0 ? rms : Math.abs(needle[worst]!),
    doubt95: Z95 * (sd ? sd[worst]! : rows.positionSdNm[worst]! / rows.fullScaleNm[worst]!),
    ...(unseen ? { unseen } : {}),
    beyondHalf: beyond(0.5),
    beyondThreeQuarter: beyond(0.75),
    beyondFull: beyond(1),
  };
}
