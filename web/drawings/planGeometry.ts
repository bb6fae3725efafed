/** Where things lie on the plan of a course, in miles along and across it, and how large the plan must be. */
import { acrossAt, type CourseFacts, type CourseSeries } from "./contract.ts";

export interface PlanFrame {
  readonly startNm: number;
  readonly endNm: number;
  readonly pxPerMile: number;
  /** Where along = start and across = 0 lie, px. */
  readonly left: number;
  readonly middle: number;
  readonly height: number;
  /** Width that the whole plan needs at this scale. */
  readonly neededPx: number;
  readonly tickNm: number;
}

const MARGIN_LEFT = 24;
/** Room for the name of the fix at the end. */
const MARGIN_RIGHT = 70;
/** Room for the wind and north arrows above, and for the scale bar beneath. */
const HEAD_PX = 62;
const FOOT_PX = 40;
const MOST_HALF_PX = 190;
const LEAST_HALF_PX = 30;

/** `fit` never enlarges the plan, it only brings a long one into the width. */
export function planFrame(
  facts: CourseFacts,
  series: CourseSeries,
  width: number,
  fixedPxPerMile: number,
  fit: boolean,
): PlanFrame {
  let [start, end, left, right] = [Infinity, -Infinity, 0, 0];
  for (let i = 0; i < series.alongNm.length; i++) {
    const [along, across] = [series.alongNm[i], series.crossTrackNm[i]];
    if (!Number.isFinite(along) || !Number.isFinite(across)) continue;
    start = Math.min(start, along);
    end = Math.max(end, along);
    left = Math.min(left, across);
    right = Math.max(right, across);
  }
  for (const fix of fixPlaces(facts, series)) {
    start = Math.min(start, fix.alongNm);
    end = Math.max(end, fix.alongNm);
  }
  const length = Math.max(end - start, 0.1);
  const room = width - MARGIN_LEFT - MARGIN_RIGHT;
  const pxPerMile = fit && length * fixedPxPerMile > room ? room / length : fixedPxPerMile;
  const limit = acrossAt(facts.scale, 1, length) * pxPerMile;
  const half = (nm: number) => Math.min(MOST_HALF_PX, Math.max(LEAST_HALF_PX, limit, nm * pxPerMile) + 12);
  const above = half(-left);
  return {
    startNm: start,
    endNm: end,
    pxPerMile,
    left: MARGIN_LEFT,
    middle: HEAD_PX + above,
    height: Math.ceil(HEAD_PX + above + half(right) + FOOT_PX),
    neededPx: Math.ceil(MARGIN_LEFT + length * pxPerMile + MARGIN_RIGHT),
    tickNm: [1, 2, 5, 10, 20, 50].find((nm) => nm * pxPerMile >= 10) ?? 100,
  };
}

/** Named fixes of the course by their place along it. */
export function fixPlaces(facts: CourseFacts, series: CourseSeries): { ident: string; alongNm: number }[] {
  const places: { ident: string; alongNm: number }[] = [];
  if (facts.form === "leg") {
    if (facts.fromFix !== null) places.push({ ident: facts.fromFix, alongNm: 0 });
    const end = farFix(series);
    if (facts.fix !== null && end !== null) places.push({ ident: facts.fix, alongNm: end });
  } else if (facts.fix !== null) places.push({ ident: facts.fix, alongNm: 0 });
  return places;
}

/** Along-track of the fix that distances count to: the distance to go is added to the distance gone, farthest row first. */
function farFix(series: CourseSeries): number | null {
  let best = -1;
  for (let i = 0; i < series.alongNm.length; i++) {
    if (!Number.isFinite(series.distanceToFixNm[i]) || !Number.isFinite(series.alongNm[i])) continue;
    if (best < 0 || series.distanceToFixNm[i] > series.distanceToFixNm[best]) best = i;
  }
  return best < 0 ? null : series.alongNm[best] + series.distanceToFixNm[best];
}

export interface LimitLine {
  /** Of full scale. */
  readonly share: number;
  /** 1 on the right of the course, -1 on the left. */
  readonly side: 1 | -1;
  readonly from: readonly [alongNm: number, acrossNm: number];
  readonly to: readonly [alongNm: number, acrossNm: number];
}

/** Full scale and the limit within it on both sides: a wedge from the station where the scale is angular, else level. */
export function limitLines(
  facts: CourseFacts,
  frame: Pick<PlanFrame, "startNm" | "endNm">,
  limit: number,
): LimitLine[] {
  const { scale } = facts;
  const apex = facts.form === "leg" ? frame.endNm : 0;
  const lines: LimitLine[] = [];
  for (const share of [limit, 1]) {
    for (const side of [-1, 1] as const) {
      const across = (along: number): number => side * acrossAt(scale, share, along - apex);
      // An approach past the station does not open a second wedge.
      const from =
        facts.form === "from" && scale.kind === "angular" ? Math.max(apex, frame.startNm) : frame.startNm;
      const to =
        facts.form !== "from" && scale.kind === "angular" ? Math.min(apex, frame.endNm) : frame.endNm;
      lines.push({ share, side, from: [from, across(from)], to: [to, across(to)] });
    }
  }
  return lines;
}
