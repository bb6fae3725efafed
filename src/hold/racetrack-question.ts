/** What is asked of a racetrack, and the same in the frame of its inbound course. */
import { cosDeg } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type {
  AngleSize,
  DegreesPerSecond,
  Knots,
  NauticalMiles,
  Seconds,
  TrueDegrees,
} from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { Wind } from "../wind/index.ts";
import { airInFrame, type InFrame, rateOfBank } from "../wind/index.ts";

/**
 * What is given of the legs. `inbound-time`: between the turns, as US timing asks. `outbound-clock`: by the rule of
 * ICAO timing, from abeam the fix or from wings level, whichever is later. `outbound-time`: between the turns.
 * `distance`: from the fix, along the course, to the end of the outbound leg, as a station's distance shows it (slant and
 * sideways offset left out).
 */
export type HoldLeg =
  | { readonly by: "inbound-time" | "outbound-clock" | "outbound-time"; readonly seconds: Seconds }
  | { readonly by: "distance"; readonly distance: NauticalMiles };

export interface HoldQuestion {
  readonly inbound: TrueDegrees;
  readonly turns: TurnSide;
  readonly trueAirspeed: Knots;
  readonly wind: Wind;
  readonly leg: HoldLeg;
  /** Wanted in the turns; less is flown where the bank limit is reached first. */
  readonly turnRate: DegreesPerSecond;
  readonly mostBank: AngleSize;
}

/** The hold in the frame of its inbound course. */
export interface Framed {
  readonly air: InFrame;
  readonly speed: Knots;
  /** Right positive. */
  readonly rate: DegreesPerSecond;
  readonly turning: Seconds;
  /** Heading inbound, counted from the course. */
  readonly inbound: number;
  readonly inboundSpeed: Knots;
}

/** Null where no heading holds the inbound course, or the aircraft makes no way on it. */
export function framed(question: HoldQuestion): Framed | null {
  const { trueAirspeed, turnRate, mostBank, wind, inbound, turns } = question;
  if (!(trueAirspeed > 0)) throw new RangeError(`invalid airspeed: ${trueAirspeed}`);
  if (!(turnRate > 0)) throw new RangeError(`invalid turn rate: ${turnRate}`);
  if (!(mostBank > 0 && mostBank < 90)) throw new RangeError(`invalid bank: ${mostBank}`);
  const air = airInFrame(wind, inbound);
  const size = Math.min(turnRate, rateOfBank(mostBank, trueAirspeed));
  const correction = Math.asin(-air.across / trueAirspeed) * DEGREES_PER_RADIAN;
  const inboundSpeed = trueAirspeed * cosDeg(correction) + air.along;
  if (!(wind.speed < trueAirspeed) || !(inboundSpeed > 0)) return null;
  return {
    air,
    speed: trueAirspeed,
    rate: turns === "right" ? size : -size,
    turning: 360 / size,
    inbound: correction,
    inboundSpeed,
  };
}
