/** How much of a descent its profile shows, at which scale, and where the rates stand beneath. */
import type { DescentFacts, DescentSeries } from "./contract.ts";
import type { StripFrame } from "./Strip.tsx";
import { type FixedScales, fittingScale, PX_PER_MM } from "./scale.ts";

const MARGINS = { wide: { left: 64, right: 70 }, narrow: { left: 52, right: 16 } } as const;
/** Shown before the first place that is named, and past the point where the height is wanted, NM. Own choices. */
const BEFORE_NM = 1;
const PAST_NM = 1;
const STEP_FT = 500;
/** A taller profile leaves no room for the rates on one page: then 1,000 ft take less. Own choice. */
const MOST_PROFILE_PX = 420;
const HEAD_PX = 52;
const BETWEEN_PX = 40;
const FOOT_PX = 38;
/** Rates shown, ft/min, and gradients where the log has no times, ft/NM. Own choices. */
const DOWN_SHOWN = { upFpm: 500, downFpm: 2000, upFtPerNm: 200, downFtPerNm: 800 } as const;

export interface DescentLayout {
  readonly mmPerMile: number;
  readonly pxPerMile: number;
  readonly mmPerThousandFeet: number;
  readonly farNm: number;
  /** Past the point: negative. */
  readonly nearNm: number;
  readonly bottomFt: number;
  readonly topFt: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  readonly rate: StripFrame;
  readonly axis: number;
  readonly timed: boolean;
  readonly x: (toGoNm: number) => number;
  readonly y: (altitudeFt: number) => number;
}

export function descentLayout(
  facts: DescentFacts,
  series: DescentSeries,
  columnPx: number,
  scales: FixedScales,
  narrow: boolean,
): DescentLayout {
  const { left, right } = narrow ? MARGINS.narrow : MARGINS.wide;
  const { distanceToGoNm: toGo, altitudeFt } = series;
  const named = [facts.began?.toGoNm ?? 0, ...facts.constant.map(({ beginToGoNm }) => beginToGoNm ?? 0), 4];
  const farNm = Math.ceil(Math.max(...named) + BEFORE_NM);
  const nearNm = Math.min(-PAST_NM, -facts.beforeNm - PAST_NM / 2, facts.reached?.toGoNm ?? 0);
  const mmPerMile = fittingScale(
    scales.mmPerMileOfDescent,
    (mm) => (farNm - nearNm) * mm * PX_PER_MM <= columnPx - left - right,
  );
  const pxPerMile = mmPerMile * PX_PER_MM;
  let [low, high] = [facts.toFt, facts.toFt];
  for (let i = 0; i < toGo.length; i++) {
    if (!(toGo[i] <= farNm && toGo[i] >= nearNm) || !Number.isFinite(altitudeFt[i])) continue;
    low = Math.min(low, altitudeFt[i]);
    high = Math.max(high, altitudeFt[i]);
  }
  const bottomFt = Math.floor((low - STEP_FT / 2) / STEP_FT) * STEP_FT;
  const topFt = Math.ceil((high + 1) / STEP_FT) * STEP_FT;
  const span = (topFt - bottomFt) / 1000;
  const mmPerThousandFeet = fittingScale(
    scales.mmPerThousandFeet,
    (mm) => span * mm * PX_PER_MM <= MOST_PROFILE_PX,
  );
  const pxPerFoot = (mmPerThousandFeet * PX_PER_MM) / 1000;
  const [top, bottom] = [HEAD_PX, HEAD_PX + (topFt - bottomFt) * pxPerFoot];
  const plot = (farNm - nearNm) * pxPerMile;
  const timed = Number.isFinite(series.timeMs[0]);
  const { upFpm, downFpm, upFtPerNm, downFtPerNm } = DOWN_SHOWN;
  const rateHeight = ((upFpm + downFpm) / 1000) * scales.mmPerThousandFeetPerMinute * PX_PER_MM;
  const rate = {
    ...{ left, top: bottom + BETWEEN_PX, width: plot, height: rateHeight },
    // descending is positive in these columns, and down on the page
    ...(timed ? { upper: -upFpm, lower: downFpm } : { upper: -upFtPerNm, lower: downFtPerNm }),
  };
  const axis = rate.top + rateHeight + 8;
  return {
    ...{ mmPerMile, pxPerMile, mmPerThousandFeet, farNm, nearNm, bottomFt, topFt, timed },
    ...{ left, right: left + plot, top, bottom, rate, axis },
    width: Math.ceil(left + plot + right),
    height: Math.ceil(axis + FOOT_PX),
    x: (nm) => left + (farNm - nm) * pxPerMile,
    y: (ft) => bottom - (ft - bottomFt) * pxPerFoot,
  };
}
