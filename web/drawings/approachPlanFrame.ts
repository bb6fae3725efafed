/** Where an approach lies on its plan, course-up with the runway on top, and how large the plan must be. */
import {
  type ApproachFacts,
  type ApproachSeries,
  METRES_PER_FOOT,
  nauticalMilesFromMetres,
} from "./contract.ts";
import { fittingScale, PX_PER_MM } from "./scale.ts";
import type { Point } from "./windGeometry.ts";

/** Room for the miles at the left, and for names at the right. */
const MILES_PX = 34;
const NAMES_PX = 92;
/** On top the wind, the course and north. */
const TOP_PX = 74;
const FOOT_PX = 34;
/** Shown beyond the runway's end, before the final fix, and before the place where the final was joined, NM. Own choices. */
const BEYOND_NM = 0.4;
const BEFORE_FIX_NM = 1;
const BEFORE_JOINED_NM = 1;
/** Shown to either side at least and at most, NM. Own choice: the cut onto the final, not the way to it. */
const LEAST_ASIDE_NM = 0.4;
const MOST_ASIDE_NM = 1;
/** A page of A4 is 1,005 px high between its margins: a taller plan would be cut. */
const MOST_HEIGHT_PX = 960;

export interface ApproachPlanFrame {
  readonly mmPerMile: number;
  readonly pxPerMile: number;
  readonly farNm: number;
  /** Negative: past the threshold. */
  readonly nearNm: number;
  readonly leftNm: number;
  readonly rightNm: number;
  readonly width: number;
  readonly height: number;
  /** Right of course goes right, the runway is on top. */
  readonly place: (acrossNm: number, distanceNm: number) => Point;
}

export function approachPlanFrame(
  facts: ApproachFacts,
  series: ApproachSeries,
  columnPx: number,
  fixedMm: number,
): ApproachPlanFrame {
  const farNm = Math.max(
    (facts.finalFix?.distanceNm ?? 5) + BEFORE_FIX_NM,
    (facts.intercept?.joinedDistanceNm ?? 0) + BEFORE_JOINED_NM,
  );
  const nearNm = -nauticalMilesFromMetres(facts.runway.lengthFt * METRES_PER_FOOT) - BEYOND_NM;
  let [left, right] = [-LEAST_ASIDE_NM, LEAST_ASIDE_NM];
  for (let i = 0; i < series.crossTrackNm.length; i++) {
    const distance = series.distanceToThresholdNm[i];
    if (!(distance <= farNm && distance >= nearNm)) continue;
    const full = series.judged[i] === 1 ? series.fullScaleNm[i] : 0;
    left = Math.max(-MOST_ASIDE_NM, Math.min(left, series.crossTrackNm[i], -full));
    right = Math.min(MOST_ASIDE_NM, Math.max(right, series.crossTrackNm[i], full));
  }
  const sizeAt = (mm: number) => ({
    width: MILES_PX + (right - left) * mm * PX_PER_MM + NAMES_PX,
    height: TOP_PX + (farNm - nearNm) * mm * PX_PER_MM + FOOT_PX,
  });
  const mmPerMile = fittingScale(fixedMm, (mm) => {
    const { width, height } = sizeAt(mm);
    return width <= columnPx && height <= MOST_HEIGHT_PX;
  });
  const { width, height } = sizeAt(mmPerMile);
  const pxPerMile = mmPerMile * PX_PER_MM;
  return {
    ...{ mmPerMile, pxPerMile, farNm, nearNm, leftNm: left, rightNm: right },
    width: Math.ceil(width),
    height: Math.ceil(height),
    place: (across, distance) => [
      MILES_PX + (across - left) * pxPerMile,
      TOP_PX + (distance - nearNm) * pxPerMile,
    ],
  };
}
