/** Where an arc lies on its plan, north-up in miles from the station, and how large the plan must be. */
import type { ArcFacts, ArcSeries } from "./contract.ts";
import { boundsOf } from "./plane.ts";
import { fittingScale, PX_PER_MM } from "./scale.ts";
import { onPaper, type Point } from "./windGeometry.ts";

/** Room for names of radials and fixes around, for wind and north on top, and for the scale bar. */
const SIDE_PX = 58;
const TOP_PX = 78;
const FOOT_PX = 46;
const MOST_HEIGHT_PX = 720;
/** Radials are drawn so far beyond the arc, NM. Own choice. */
export const BEYOND_NM = 1.2;

export interface ArcPlanFrame {
  readonly mmPerMile: number;
  readonly pxPerMile: number;
  readonly width: number;
  readonly height: number;
  readonly hasStation: boolean;
  /** On a radial, so far from the station. */
  readonly place: (radialTrueDeg: number, distanceNm: number) => Point;
}

/** North-up miles from the station: right and down the page. */
const miles = (radialTrueDeg: number, distanceNm: number): Point => {
  const [x, y] = onPaper(radialTrueDeg, 0);
  return [x * distanceNm, y * distanceNm];
};

/** Degrees from the first radial to the last, in steps that leave no corners. */
export function alongArc(facts: ArcFacts, distanceNm: number): [radialTrueDeg: number, distanceNm: number][] {
  const side = facts.turns === "right" ? 1 : -1;
  const steps = Math.max(2, Math.ceil(facts.sweepDeg));
  return Array.from({ length: steps + 1 }, (_, k) => [
    facts.fromRadialTrueDeg + (side * facts.sweepDeg * k) / steps,
    distanceNm,
  ]);
}

export function arcPlanFrame(
  facts: ArcFacts,
  series: ArcSeries,
  columnPx: number,
  fixedMm: number,
): ArcPlanFrame {
  const arc = alongArc(facts, facts.radiusNm + BEYOND_NM).map(([radial, nm]) => miles(radial, nm));
  const flown = Array.from(series.radialTrueDeg, (radial, i) => miles(radial, series.distanceNm[i]));
  const sizes = (points: Point[]) => {
    const b = boundsOf(points)!;
    const at = (mm: number) => ({
      width: (b.east - b.west) * mm * PX_PER_MM + 2 * SIDE_PX,
      height: TOP_PX + (b.north - b.south) * mm * PX_PER_MM + FOOT_PX,
    });
    const fits = (mm: number) => at(mm).width <= columnPx && at(mm).height <= MOST_HEIGHT_PX;
    return { b, at, fits };
  };
  const whole = sizes([...arc, ...flown, [0, 0]]);
  // a station too far away is left off rather than the scale
  const hasStation = whole.fits(fixedMm);
  const { b, at, fits } = hasStation ? whole : sizes([...arc, ...flown]);
  const mmPerMile = fittingScale(fixedMm, fits);
  const pxPerMile = mmPerMile * PX_PER_MM;
  const { width, height } = at(mmPerMile);
  return {
    ...{ mmPerMile, pxPerMile, hasStation, width: Math.ceil(width), height: Math.ceil(height) },
    place: (radial, distance) => {
      const [x, y] = miles(radial, distance);
      // `south` is the least y, which on paper is the top
      return [SIDE_PX + (x - b.west) * pxPerMile, TOP_PX + (y - b.south) * pxPerMile];
    },
  };
}
