/** Where the height of a descent is wanted: so far before the passage of its fix, on the way flown. */
import { measureAround } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { passageRow } from "./passage.ts";

export interface DescentPoint {
  /** The row of the passage of the fix, and how far from it that was. */
  readonly passage: number;
  readonly passedNm: NauticalMiles;
  /** The place of the point along the way flown, and the first row at it or past it, in the span. */
  readonly atNm: NauticalMiles;
  readonly row: number;
}

/** `before`: how far before the fix the height is wanted; `flownNm`: the way flown from the first row of the path on. */
export function descentPoint(
  { fix, before }: { readonly fix: Position; readonly before: NauticalMiles },
  { latitude, longitude }: { readonly latitude: Float64Array; readonly longitude: Float64Array },
  { start, end }: Span,
  flownNm: Float64Array,
): DescentPoint {
  const { distance } = measureAround(fix, latitude.subarray(start, end), longitude.subarray(start, end));
  const nearest = passageRow(distance, 0, distance.length);
  const passage = start + nearest;
  return {
    passage,
    passedNm: nauticalMilesFromMetres(distance[nearest]!),
    atNm: flownNm[passage]! - before,
    row: rowBefore(flownNm, passage, before, start),
  };
}

/** The first row from another on that lies less than so far before a passage, or at it. */
export const rowBefore = (
  flownNm: Float64Array,
  passage: number,
  before: NauticalMiles,
  from: number,
): number => Math.max(from, Math.min(passage, firstAtOrAfter(flownNm, flownNm[passage]! - before)));
