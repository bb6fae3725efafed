/** The needle where an angular one is judged no farther: a mile from its station, between two points of the log. */
import { acrossAt } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import { NEAR_STATION, type NeedleScale } from "../standard/needle.ts";
import type { Rows } from "./path.ts";

type NeedleRows = Pick<Rows, "length" | "distanceToFixNm" | "pastFix" | "crossTrackNm">;

/**
 * The largest share of full scale, sign left out, at the ends of a judged span that lie a mile from the station, read
 * straight between the points on both sides; 0 where neither end does. So near a needle grows with each second, and
 * the last point before the mile may be long before it.
 */
export function needleAtTheMile(scale: NeedleScale, rows: NeedleRows, { start, end }: Span): number {
  if (scale.kind !== "angular") return 0;
  const full = acrossAt(scale, 1, NEAR_STATION);
  const between = (inside: number, outside: number): number => {
    if (outside < 0 || outside >= rows.length) return 0;
    const from = rows.distanceToFixNm[inside]!;
    // past the station the way led through it
    const isPast = rows.pastFix[outside] !== rows.pastFix[inside];
    const to = isPast ? -rows.distanceToFixNm[outside]! : rows.distanceToFixNm[outside]!;
    if (!(from >= NEAR_STATION && to < NEAR_STATION)) return 0;
    const share = (from - NEAR_STATION) / (from - to);
    const across = rows.crossTrackNm[inside]! * (1 - share) + rows.crossTrackNm[outside]! * share;
    return Math.abs(across) / full || 0;
  };
  return Math.max(between(end - 1, end), between(start, start - 1));
}
