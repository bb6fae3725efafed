/** How much of an approach its drawings show, and at which scale: the same for every flight that fits. */
import type { ApproachFacts, ApproachSeries } from "./contract.ts";
import { type FixedScales, fittingScale, PX_PER_MM } from "./scale.ts";

/** Shown before the final fix, and past the threshold, NM. Own choices. */
const BEFORE_FIX_NM = 1;
const PAST_NM = 0.8;
/** Where there is no final fix, or a near one, so much of the final is shown at least, NM. Own choice. */
const LEAST_FAR_NM = 6;
/** Shown before the place where the final was joined, where there is room for it, NM. */
const BEFORE_JOINED_NM = 0.5;
/** The height axis is in whole steps of this, and shows at least and at most so many of them. Own choice. */
const STEP_FT = 500;
const LEAST_STEPS = 3;
const MOST_STEPS = 8;

export interface ApproachWindow {
  /** Before the threshold, and past it (negative), NM. */
  readonly farNm: number;
  readonly nearNm: number;
  readonly mmPerMile: number;
  readonly pxPerMile: number;
  /** Of the heights drawn. */
  readonly bottomFt: number;
  readonly topFt: number;
}

/** What is drawn upward: height above the threshold, or the altitude as logged where the elevation is not known. */
export interface UprightHeights {
  readonly column: Float64Array;
  /** Subtracted from an altitude to come to the axis. */
  readonly elevationFt: number;
  readonly aboveThreshold: boolean;
}

export function uprightHeights(facts: ApproachFacts, series: ApproachSeries): UprightHeights {
  const { elevationFt } = facts.runway;
  return elevationFt === null
    ? { column: series.altitudeFt, elevationFt: 0, aboveThreshold: false }
    : { column: series.heightAboveThresholdFt, elevationFt, aboveThreshold: true };
}

/** The window along the final: wide enough for the final fix, wider where there is room. */
export function approachWindow(
  facts: ApproachFacts,
  series: ApproachSeries,
  roomPx: number,
  scales: FixedScales,
): ApproachWindow {
  const fix = facts.finalFix?.distanceNm ?? 0;
  const least = Math.max(LEAST_FAR_NM, fix + BEFORE_FIX_NM);
  const wanted = Math.max(least, (facts.intercept?.joinedDistanceNm ?? 0) + BEFORE_JOINED_NM);
  const mmPerMile = fittingScale(
    scales.mmPerMileOfProfile,
    (mm) => (least + PAST_NM) * mm * PX_PER_MM <= roomPx,
  );
  const pxPerMile = mmPerMile * PX_PER_MM;
  // in tenths of a mile, so that the edge does not move with every pixel of the page
  const farNm = Math.min(wanted, Math.max(least, Math.floor((roomPx / pxPerMile - PAST_NM) * 10) / 10));
  return { farNm, nearNm: -PAST_NM, mmPerMile, pxPerMile, ...heightsShown(facts, series, farNm) };
}

function heightsShown(facts: ApproachFacts, series: ApproachSeries, farNm: number) {
  const { column, elevationFt, aboveThreshold } = uprightHeights(facts, series);
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < column.length; i++) {
    const distance = series.distanceToThresholdNm[i];
    if (!(distance <= farNm && distance >= -PAST_NM) || !Number.isFinite(column[i])) continue;
    low = Math.min(low, column[i]);
    high = Math.max(high, column[i]);
  }
  const fixFt = facts.finalFix?.altitudeFt;
  if (typeof fixFt === "number") high = Math.max(high, fixFt - elevationFt);
  const bottomFt = aboveThreshold || !Number.isFinite(low) ? 0 : Math.floor(low / STEP_FT) * STEP_FT;
  const steps = Math.ceil((high - bottomFt) / STEP_FT);
  return { bottomFt, topFt: bottomFt + STEP_FT * Math.max(LEAST_STEPS, Math.min(MOST_STEPS, steps || 0)) };
}
