/** The constant descents that would just have met the height, as heights over each row. */
import type { DescentFacts, DescentSeries } from "./contract.ts";

type Constant = DescentFacts["constant"][number];

/**
 * Height at a row on a descent that meets the height at the point: at a constant rate it follows the time to go, so
 * that a changing ground speed bends it; at a constant gradient the way to go. NaN before it begins and past the point.
 */
export function heightOnConstant(
  { basis, downFpm, downFtPerNm, beginToGoNm }: Constant,
  facts: Pick<DescentFacts, "toFt" | "crossing">,
  series: DescentSeries,
  row: number,
): number {
  const toGo = series.distanceToGoNm[row];
  if (beginToGoNm === null || !(toGo <= beginToGoNm && toGo >= 0)) return Number.NaN;
  const crossed = facts.crossing?.utc;
  if (basis === "usual-gradient" || downFpm === null || crossed == null)
    return facts.toFt + downFtPerNm * toGo;
  return facts.toFt + (downFpm * (Date.parse(crossed) - series.timeMs[row])) / 60_000;
}
