/** Heading against course: the wind correction that was flown, and the one that this wind needed. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { intervals, median, type WeighedRows, weigh, Z95 } from "../quantity/weigh.ts";
import type { Correction } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { windOver } from "./fact.ts";
import { headingForCourse } from "./triangle.ts";
import type { WindEstimate, WindFact } from "./wind.ts";

/** What is read of rows along a line to hold the heading against it. */
export interface HeadedRows extends WeighedRows {
  readonly length: number;
  /** Row of the motion of row 0. */
  readonly pathStart: number;
  readonly courseAtFootDeg: Float64Array;
  readonly trackDeg: Float64Array;
  readonly headingDeg: Float64Array;
}

/** Correction flown and needed over some rows, right positive, where the wind is known in full; its doubt is that of the wind across and of the airspeed. */
export interface CorrectionMeasured extends Correction {
  readonly drift: TurnDegrees;
  readonly driftDoubt95: AngleSize;
  readonly course: TrueDegrees;
}

/**
 * The wind correction angle that holds a course, right positive, and the heading that contains it; null where the
 * wind is not known in full, or too strong for the airspeed. The doubt adds those of the wind across and of the
 * airspeed by their derivatives, taken as independent.
 */
export function neededCorrection(
  course: TrueDegrees,
  wind: WindFact,
): { readonly needed: TurnDegrees; readonly heading: TrueDegrees; readonly doubt95: AngleSize } | null {
  const { from, speed, trueAirspeed, across95, trueAirspeed95 } = wind;
  if (wind.knowledge !== "full" || from === null || speed === null || !trueAirspeed) return null;
  const solved = headingForCourse(course, trueAirspeed, { from, speed });
  if (!solved) return null;
  // correction = asin(x / V): its derivatives by x and V are 1 / (V cos) and -x / (V^2 cos)
  const share = sinDeg(solved.correction);
  const doubt = Math.hypot(across95 ?? wind.ellipse95.major, share * (trueAirspeed95 ?? 0));
  const doubt95 = (doubt / (trueAirspeed * Math.max(0.1, cosDeg(solved.correction)))) * DEGREES_PER_RADIAN;
  return { needed: solved.correction, heading: solved.heading, doubt95 };
}

/** Less than this share of the rows with a known heading is not called known. */
const KNOWN_SHARE = 0.5;

/** Null where the wind is not known in full over the span. */
export function measureCorrection(
  rows: HeadedRows,
  span: Span,
  motion: Motion,
  estimate: WindEstimate,
): CorrectionMeasured | null {
  const offset = rows.pathStart;
  const wind = windOver(estimate, motion, { start: span.start + offset, end: span.end + offset });
  if (wind.knowledge !== "full" || wind.from === null || wind.speed === null) return null;
  const weights = intervals(rows, span);
  const lead = new Float64Array(rows.length).fill(Number.NaN);
  const drifts = lead.slice();
  let east = 0;
  let north = 0;
  for (let i = span.start; i < span.end; i++) {
    lead[i] = turnFrom(rows.courseAtFootDeg[i]!, rows.headingDeg[i]!);
    drifts[i] = turnFrom(rows.headingDeg[i]!, rows.trackDeg[i]!);
    east += sinDeg(rows.courseAtFootDeg[i]!);
    north += cosDeg(rows.courseAtFootDeg[i]!);
  }
  const course = directionOf(east, north);
  const flown = weigh(lead, span, weights);
  const drift = weigh(drifts, span, weights);
  const needed = neededCorrection(course, wind);
  const whole = weights.reduce((a, b) => a + b, 0);
  if (!needed || !(flown.weight >= KNOWN_SHARE * whole) || !(flown.weight > 0)) return null;
  const headingSd = estimate.alongFlight.headingSd.subarray(span.start + offset, span.end + offset);
  return {
    flown: flown.mean,
    needed: needed.needed,
    doubt95: needed.doubt95,
    drift: drift.mean,
    // the error of the wind is shared by all rows: averaging does not shrink it
    driftDoubt95: Z95 * median(headingSd),
    course,
    across: -wind.speed * sinDeg(wind.from - course),
    across95: wind.across95 ?? wind.ellipse95.major,
  };
}
