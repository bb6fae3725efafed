/** The fixed scales of the drawings, in millimetres on paper and on screen. */

/** Exactly, by definition: 96 px to the inch of 25.4 mm. CSS Values and Units Level 3, section 5.2. */
export const PX_PER_MM = 96 / 25.4;

/** The printed column: A4 less its margins of 12 mm each; Letter is wider. */
export const PAPER_PX = Math.floor((210 - 24) * PX_PER_MM);
/** Canvases on paper are painted finer than the screen, so that lines stay lines. */
export const PAPER_PIXEL_RATIO = 3;

/** Under this width of the window, time and distance axes halve. Own choice of the look. */
export const NARROW_PX = 820;

export interface FixedScales {
  /** Along the time axis of a course. */
  readonly mmPerMinute: number;
  /** Along the distance axis of a course whose log has no times. */
  readonly mmPerMileOfChart: number;
  /** From needle centred to full scale. */
  readonly mmPerFullScale: number;
  readonly mmPerTenDegrees: number;
  /** Plan view of a course. */
  readonly mmPerMileOfPlan: number;
  /** Plan view of a hold. */
  readonly mmPerMileOfHold: number;
  /** Profile and plan of an approach; a descent takes longer, and its profile is smaller. */
  readonly mmPerMileOfProfile: number;
  readonly mmPerMileOfDescent: number;
  readonly mmPerMileOfApproachPlan: number;
  readonly mmPerThousandFeet: number;
  /** Along the axis of an arc, and across it. */
  readonly mmPerTenDegreesOfArc: number;
  readonly mmPerMileOffArc: number;
  /** A needle beneath a profile, from centred to full scale. */
  readonly mmPerFullScaleOfStrip: number;
  /** Rates of descent beneath a profile. */
  readonly mmPerThousandFeetPerMinute: number;
  /** Wind arrows everywhere. */
  readonly mmPerTenKnots: number;
  readonly mmPerTenKnotsOfCircle: number;
  /** The wind against time: along its axis, and for its direction. */
  readonly mmPerTenMinutesOfWind: number;
  readonly mmPerThirtyDegreesOfWind: number;
  /** The wind against height. */
  readonly mmPerThousandFeetOfWind: number;
  /** Line-up: from 0 to full scale. */
  readonly mmPerFullScaleOfLineUp: number;
}

const WIDE: FixedScales = {
  mmPerMinute: 20,
  mmPerMileOfChart: 20,
  mmPerFullScale: 20,
  mmPerTenDegrees: 5.5,
  mmPerMileOfPlan: 10,
  mmPerMileOfHold: 30,
  mmPerMileOfProfile: 20,
  mmPerMileOfDescent: 10,
  mmPerMileOfApproachPlan: 20,
  mmPerThousandFeet: 20,
  mmPerTenDegreesOfArc: 15,
  mmPerMileOffArc: 20,
  mmPerFullScaleOfStrip: 10,
  mmPerThousandFeetPerMinute: 10,
  mmPerTenKnots: 5,
  mmPerTenKnotsOfCircle: 5,
  mmPerTenMinutesOfWind: 30,
  mmPerThirtyDegreesOfWind: 10,
  mmPerThousandFeetOfWind: 10,
  mmPerFullScaleOfLineUp: 52,
};

/** The scales for a window: plans of courses and wind arrows keep theirs when it is narrow. */
export function fixedScales(narrow: boolean): FixedScales {
  return narrow
    ? {
        ...WIDE,
        mmPerMinute: 10,
        mmPerMileOfChart: 10,
        mmPerMileOfHold: 20,
        mmPerMileOfProfile: 10,
        mmPerMileOfDescent: 5,
        mmPerTenDegreesOfArc: 7.5,
        mmPerTenKnotsOfCircle: 4,
        mmPerTenMinutesOfWind: 15,
      }
    : WIDE;
}

/** Where a figure is too large for its fixed scale: the next smaller of these, mm for a mile. Own choice. */
const SMALLER_MM = [15, 10, 7.5, 5, 3, 2, 1, 0.5];

/** The fixed scale where the figure fits, else the largest smaller step at which it does. */
export const fittingScale = (fixedMm: number, fits: (mm: number) => boolean): number =>
  [fixedMm, ...SMALLER_MM.filter((mm) => mm < fixedMm)].find(fits) ?? SMALLER_MM[SMALLER_MM.length - 1];

export const PX_PER_KNOT = (WIDE.mmPerTenKnots / 10) * PX_PER_MM;
