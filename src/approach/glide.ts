/** Against the glide path over the judged final: the needle, and how far below and above in feet. */
import type { Span } from "../quantity/span.ts";
import type { Feet } from "../quantity/units.ts";
import { rowOfLargest, weigh, Z95 } from "../quantity/weigh.ts";
import { utcOfRow } from "./column.ts";
import { needleFacts } from "./deviation.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { PathGuide } from "./vertical.ts";

type Extreme = NonNullable<ApproachFacts["glidePath"]>["below"];

/** A vertical needle is not judged below this: the lowest decision height of a Category I approach (ICAO Annex 6, from memory). */
const LOWEST_ON_GLIDE: Feet = 200;

/** The rows of the final that are high enough for a vertical needle; at least one. */
function glideSpan({ heightFt }: ApproachRows, { start, end }: Span): Span {
  let last = end;
  while (last > start + 1 && heightFt[last - 1]! < LOWEST_ON_GLIDE) last--;
  return { start, end: last };
}

/** Null without a path, and where no height is known. */
export function glidePathFacts(
  rows: ApproachRows,
  final: Span,
  weights: Float64Array,
  guide: PathGuide | null,
): ApproachFacts["glidePath"] {
  const span = glideSpan(rows, final);
  const share = weights.subarray(0, span.end - span.start);
  const needle = needleFacts(rows, span, share, rows.pathNeedle, rows.pathNeedleSd);
  if (!guide || !needle) return null;
  const { angle, crossing, label, citation, supposed } = guide;
  const worst = rowOfLargest(rows.pathNeedle, span);
  const { mean, weight } = weigh(rows.pathDeg, span, share);
  return {
    angleDeg: angle,
    crossingFt: crossing,
    label,
    citation,
    supposed,
    needle,
    worstFt: rows.pathFt[worst]!,
    meanDeg: weight > 0 ? mean : rows.pathDeg[worst]!,
    below: farthest(rows, span, -1, Infinity),
    aboveLow: farthest(rows, span, 1, LOW),
  };
}

/** Below this the European test looks at what is flown above the path. Part-FCL Appendix 7, flight test tolerances. */
const LOW: Feet = 1000;

/** The farthest to one side of the path, at a height of no more than so much; null where it was never on that side. */
function farthest(rows: ApproachRows, { start, end }: Span, side: 1 | -1, most: Feet): Extreme {
  let at = -1;
  for (let i = start; i < end; i++) {
    const off = side * rows.pathFt[i]!;
    if (off > 0 && rows.heightFt[i]! <= most && !(at >= 0 && off <= side * rows.pathFt[at]!)) at = i;
  }
  return at < 0
    ? null
    : {
        ft: side * rows.pathFt[at]!,
        doubt95Ft: Z95 * rows.heightSdFt[at]!,
        distanceNm: rows.distanceNm[at]!,
        utc: utcOfRow(rows, at),
      };
}
