/** Against the glide path over the judged final: the needle, and how far below and above in feet. */
import { gradientOf } from "../quantity/descent.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Feet, Share } from "../quantity/units.ts";
import type { SilentEdge } from "../quantity/unseen.ts";
import { rowOfLargest, weigh, Z95 } from "../quantity/weigh.ts";
import { utcOfRow } from "./column.ts";
import { needleFacts, upAndDown } from "./deviation.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import { silentEnds } from "./silence.ts";
import type { PathGuide } from "./vertical.ts";

type Extreme = NonNullable<ApproachFacts["glidePath"]>["below"];

/** A vertical needle is not judged below this: the lowest decision height of a Category I approach (ICAO Annex 6, from memory). */
const LOWEST_ON_GLIDE: Feet = 200;

/** Where no fix says where the path is met, it is met from below when the needle comes this near. Common practice, no source. */
const MET: Share = 0.25;

/** The rows of a span that are high enough for a vertical needle. At least two. */
export function onGlide({ heightFt }: ApproachRows, { start, end }: Span): Span {
  let last = end;
  while (last > start + 2 && heightFt[last - 1]! < LOWEST_ON_GLIDE) last--;
  return { start, end: last };
}

/** The rows of the final that are high enough for a vertical needle; without a fix from where the path was met. At least two. */
function glideSpan(rows: ApproachRows, final: Span, fixed: boolean): Span {
  const { start, end: last } = onGlide(rows, final);
  let first = start;
  if (!fixed) while (first < last && !(rows.pathNeedle[first]! >= -MET)) first++;
  return first < last - 1 ? { start: first, end: last } : { start, end: last };
}

/** A silence after the last row, while the needle still counted: down the path at the ground speed there. */
function silentEnd(rows: ApproachRows, span: Span, angle: AngleSize): SilentEdge[] {
  const room = (rows.heightFt[span.end - 1]! - LOWEST_ON_GLIDE) / gradientOf(angle);
  return silentEnds(rows, span, { before: 0, after: Math.max(0, room) });
}

/** Null without a path, and where no height is known. `fixed`: the final begins over a fix. `edges`: silences beside it. */
export function glidePathFacts(
  rows: ApproachRows,
  final: Span,
  weights: Float64Array,
  guide: PathGuide | null,
  fixed: boolean,
  edges: readonly SilentEdge[],
): ApproachFacts["glidePath"] {
  if (!guide) return null;
  const span = glideSpan(rows, final, fixed);
  const share = weights.subarray(span.start - final.start, span.end - final.start);
  const needle = needleFacts(rows, span, share, rows.pathNeedle, {
    sd: rows.pathNeedleSd,
    strayed: upAndDown(rows),
    edges: [...edges.filter(({ row }) => row === span.start), ...silentEnd(rows, span, guide.angle)],
  });
  if (!needle) return null;
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
    surest: farthestOff(rows, span, worst, -1),
    widest: farthestOff(rows, span, worst, 1),
    below: farthest(rows, span, -1, Infinity),
    aboveLow: farthest(rows, span, 1, LOW),
  };
}

/** The moment when the needle is farthest off, its doubt added or taken off. */
function farthestOff(
  rows: ApproachRows,
  { start, end }: Span,
  worst: number,
  sign: 1 | -1,
): NonNullable<ApproachFacts["glidePath"]>["surest"] {
  const { pathNeedle, pathNeedleSd } = rows;
  const bound = (i: number) => Math.abs(pathNeedle[i]!) + sign * Z95 * pathNeedleSd[i]!;
  let at = worst;
  for (let i = start; i < end; i++) if (bound(i) > bound(at)) at = i;
  return {
    needle: pathNeedle[at]!,
    doubt95: Z95 * pathNeedleSd[at]!,
    distanceNm: rows.distanceNm[at]!,
    utc: utcOfRow(rows, at),
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
