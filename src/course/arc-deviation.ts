/** How far off an arc it was flown: the distances, and from which row on it can be off it at all. */
import { direction } from "../quantity/angle.ts";
import { METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { magneticCourse, type VariationUsed } from "../quantity/magnetic.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet, NauticalMiles } from "../quantity/units.ts";
import type { SilentEdge } from "../quantity/unseen.ts";
import { median, rowOfLargest, shareBeyond, weigh, Z95 } from "../quantity/weigh.ts";
import { steadyFrom, TRACK_OFF } from "../track/index.ts";
import type { ArcFacts } from "./arc-facts.ts";
import type { ArcJudged } from "./arc-judged.ts";
import type { ArcRows } from "./arc-rows.ts";
import { unseenAcross, utcAt } from "./deviation.ts";

/** The turn onto the arc is no excursion from it, until it has ended or its track has passed the tangent. */
export function sinceRollOut(rows: ArcRows, { joinedAt, span: { start, end } }: ArcJudged): Span {
  let row = joinedAt ?? start;
  while (row < end && !steadyFrom(rows, row) && Math.abs(rows.trackErrorDeg[row]!) >= TRACK_OFF) row++;
  return { start: row, end };
}

export function deviationFacts(
  rows: ArcRows,
  span: Span,
  weights: Float64Array,
  variation: VariationUsed,
  edges: readonly SilentEdge[],
): ArcFacts["deviation"] {
  const worst = rowOfLargest(rows.deviationNm, span);
  const { mean, rms, weight } = weigh(rows.deviationNm, span, weights);
  const max = rows.deviationNm[worst]!;
  const unseen = unseenAcross(rows, span, rows.deviationNm, edges);
  const within = (limit: NauticalMiles) =>
    weight > 0 ? 1 - shareBeyond(rows.deviationNm, span, weights, limit) : Number(Math.abs(max) <= limit);
  const radial = direction(rows.radialDeg[worst]!);
  return {
    maxNm: max,
    maxUtc: utcAt(rows, worst),
    maxRadialTrueDeg: radial,
    maxRadialMagneticDeg: magneticCourse(radial, variation),
    meanNm: weight > 0 ? mean : max,
    rmsNm: weight > 0 ? rms : Math.abs(max),
    doubt95Nm: Z95 * median(rows.positionSdNm.subarray(span.start, span.end)),
    ...(unseen ? { unseen } : {}),
    withinQuarterNm: within(0.25),
    withinHalfNm: within(0.5),
    withinOneNm: within(1),
  };
}

/** How much longer the straight line through the air is than the distance over the ground. Plane trigonometry. */
export function slantOver(distance: NauticalMiles, height: Feet): NauticalMiles {
  const up = (height * METRES_PER_FOOT) / METRES_PER_NAUTICAL_MILE;
  return Math.hypot(distance, up) - distance;
}
