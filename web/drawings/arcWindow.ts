/** How much of an arc its charts show and where things stand in them: degrees of the arc along, miles and degrees across. */
import type { ArcFacts, Verdict } from "./contract.ts";
import type { StripFrame } from "./Strip.tsx";
import { type FixedScales, fittingScale, PX_PER_MM } from "./scale.ts";

/** Shown before the first radial and past the last, degrees of the arc. Own choice. */
const ASIDE_DEG = 5;
/** Off the arc and off its tangent, shown to either side. Own choices: a limit and a quarter; as for courses. */
const SHOWN_NM = 1.25;
const SHOWN_DEG = 30;
const MARGINS = { wide: { left: 64, right: 70 }, narrow: { left: 52, right: 16 } } as const;
const HEAD_PX = 40;
const BETWEEN_PX = 34;
const FOOT_PX = 40;
/** One mile: what the test standards that name an arc allow; drawn where none is named. */
const USUAL_LIMIT_NM = 1;

export const arcLimit = (verdicts: readonly Verdict[]): number =>
  verdicts.find(({ criterion }) => criterion === "arc-distance")?.limit ?? USUAL_LIMIT_NM;

export interface ArcLayout {
  readonly mmPerTenDegrees: number;
  readonly pxPerDegree: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly height: number;
  readonly deviation: StripFrame;
  readonly error: StripFrame;
  /** Abscissa of degrees of the arc behind the aircraft. */
  readonly x: (goneDeg: number) => number;
}

/** Laid with the arc to the right: right of it lies below, be that inside or outside. */
export function arcLayout(
  facts: Pick<ArcFacts, "sweepDeg">,
  columnPx: number,
  scales: FixedScales,
  narrow: boolean,
): ArcLayout {
  const { left, right } = narrow ? MARGINS.narrow : MARGINS.wide;
  const [fromDeg, toDeg] = [-ASIDE_DEG, facts.sweepDeg + ASIDE_DEG];
  const room = columnPx - left - right;
  const plotAt = (mm: number) => ((toDeg - fromDeg) / 10) * mm * PX_PER_MM;
  const mmPerTenDegrees = fittingScale(scales.mmPerTenDegreesOfArc, (mm) => plotAt(mm) <= room);
  const plot = plotAt(mmPerTenDegrees);
  const frame = (top: number, height: number, shown: number): StripFrame => ({
    ...{ left, top, width: plot, height, upper: -shown, lower: shown },
  });
  const deviation = frame(HEAD_PX, 2 * SHOWN_NM * scales.mmPerMileOffArc * PX_PER_MM, SHOWN_NM);
  const under = deviation.top + deviation.height + BETWEEN_PX;
  const error = frame(under, ((2 * SHOWN_DEG) / 10) * scales.mmPerTenDegrees * PX_PER_MM, SHOWN_DEG);
  return {
    ...{ mmPerTenDegrees, pxPerDegree: plot / (toDeg - fromDeg), fromDeg, toDeg, left, right: left + plot },
    width: Math.ceil(left + plot + right),
    height: Math.ceil(error.top + error.height + FOOT_PX),
    ...{ deviation, error },
    x: (goneDeg) => left + ((goneDeg - fromDeg) / (toDeg - fromDeg)) * plot,
  };
}
