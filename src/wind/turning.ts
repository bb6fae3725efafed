/** Turns through the air: rate, bank and radius, and where a turn in a wind leads. */

import { cosDeg, direction, sinDeg, tanDeg } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_SECOND_PER_KNOT, STANDARD_GRAVITY } from "../quantity/factor.ts";
import type {
  AngleSize,
  DegreesPerSecond,
  Knots,
  NauticalMiles,
  Seconds,
  TrueDegrees,
} from "../quantity/units.ts";
import type { Wind } from "./triangle.ts";

/** Knots times seconds that make a nautical mile. */
export const KNOT_SECONDS_PER_MILE = 3600;

/** Rate of a level turn without sideslip, deg/s: g tan(bank) / V. Textbook mechanics; V true airspeed. */
export function rateOfBank(bank: AngleSize, trueAirspeed: Knots): DegreesPerSecond {
  return (
    ((STANDARD_GRAVITY * tanDeg(bank)) / (trueAirspeed * METRES_PER_SECOND_PER_KNOT)) * DEGREES_PER_RADIAN
  );
}

/** Bank of a level turn without sideslip, degrees, of the size of the rate. */
export function bankOfRate(rate: DegreesPerSecond, trueAirspeed: Knots): AngleSize {
  const speed = trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  return Math.atan((speed * Math.abs(rate)) / DEGREES_PER_RADIAN / STANDARD_GRAVITY) * DEGREES_PER_RADIAN;
}

/** Radius through the air, NM. */
export const radiusOf = (rate: DegreesPerSecond, trueAirspeed: Knots): NauticalMiles =>
  (trueAirspeed * DEGREES_PER_RADIAN) / Math.abs(rate) / KNOT_SECONDS_PER_MILE;

/**
 * A frame turned with a course: `along` in its direction, `across` to its right. Headings in it are counted from the
 * course, right positive.
 */
export interface InFrame {
  readonly along: number;
  readonly across: number;
}

/**
 * Displacement over the ground in a turn, NM, for headings counted from the course. `rate` right positive; the turn
 * goes on for `seconds` from heading `from` in a steady wind (velocity of the air, knots).
 */
export function turned(
  from: number,
  rate: DegreesPerSecond,
  seconds: Seconds,
  trueAirspeed: Knots,
  air: InFrame,
): InFrame {
  const to = from + rate * seconds;
  const radius = (trueAirspeed * DEGREES_PER_RADIAN) / rate / KNOT_SECONDS_PER_MILE; // signed
  return {
    along: radius * (sinDeg(to) - sinDeg(from)) + (air.along * seconds) / KNOT_SECONDS_PER_MILE,
    across: radius * (cosDeg(from) - cosDeg(to)) + (air.across * seconds) / KNOT_SECONDS_PER_MILE,
  };
}

/** Seconds to turn from one heading to another at a rate, right positive, by that side. */
export const secondsToTurn = (from: number, to: number, rate: DegreesPerSecond): Seconds =>
  direction((to - from) * Math.sign(rate)) / Math.abs(rate);

/** The velocity of the air in the frame of a course, knots. */
export const airInFrame = (wind: Wind, course: TrueDegrees): InFrame => ({
  along: -wind.speed * cosDeg(wind.from - course),
  across: -wind.speed * sinDeg(wind.from - course),
});
