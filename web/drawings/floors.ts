/** What an approach is not to go below, mile by mile. */
import type { ApproachWindow } from "./approachWindow.ts";
import { type ApproachFacts, onWheels } from "./contract.ts";

export interface Floor {
  readonly fromNm: number;
  readonly toNm: number;
  readonly altitudeFt: number;
  readonly isMinimum: boolean;
}

/** Heights that hold up to a place on the final, and the minimum from the last of them; none under a decision altitude. */
export function floors(facts: ApproachFacts, window: Pick<ApproachWindow, "farNm">): Floor[] {
  const { stepDowns, minimum, finalFix, missedPoint, outcome, descent } = facts;
  let from = Math.min(window.farNm, finalFix?.distanceNm ?? window.farNm);
  const all: Floor[] = [];
  for (const { distanceNm, limitFt } of stepDowns) {
    if (distanceNm < from)
      all.push({ fromNm: from, toNm: distanceNm, altitudeFt: limitFt, isMinimum: false });
    from = distanceNm;
  }
  if (minimum?.kind !== "descent") return all;
  // who lands leaves the minimum by right from the visual descent point on: FAA AIM 5-4-5, from memory
  const to = onWheels(outcome) ? (descent?.visualDescentPointNm ?? 0) : missedPoint.distanceNm;
  if (to < from) all.push({ fromNm: from, toNm: to, altitudeFt: minimum.altitudeFt, isMinimum: true });
  return all;
}
