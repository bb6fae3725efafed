/** The racetrack solved for the wind, in closed form: the outbound heading and time that bring a hold back to its fix. */
import { cosDeg, direction, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type {
  DegreesPerSecond,
  Knots,
  NauticalMiles,
  Seconds,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import type { Side } from "./script.ts";

/** Nobody flies a longer inbound leg, seconds: where the search for a distance ends. */
const LONGEST: Seconds = 3600;

export interface RacetrackInput {
  readonly inbound: TrueDegrees;
  readonly trueAirspeed: Knots;
  /** Velocity of the air over the ground (toward). */
  readonly airEast: Knots;
  readonly airNorth: Knots;
  readonly turnRate: DegreesPerSecond;
  /** Time wanted on the inbound leg, between the turns. */
  readonly inboundSeconds: Seconds;
}

export interface Racetrack {
  readonly outboundHeading: TrueDegrees;
  readonly outboundSeconds: Seconds;
  /** Heading less course, right positive. */
  readonly inboundCorrection: TurnDegrees;
  readonly outboundCorrection: TurnDegrees;
}

/**
 * Both turns together are a full circle, which displaces the aircraft through the air by nothing; the wind alone
 * moves it meanwhile. So the outbound leg must undo the inbound leg and that drift: D = -Gi Ti c - w T2.
 * Null where the wind is too strong for a solution. Method: own derivation, checked by flying it.
 */
export function solveRacetrack(input: RacetrackInput): Racetrack | null {
  const { inbound, trueAirspeed: v, airEast: we, airNorth: wn, inboundSeconds, turnRate } = input;
  const ce = sinDeg(inbound);
  const cn = cosDeg(inbound);
  const inboundCorrection = correctionOn(inbound, v, we, wn);
  if (inboundCorrection === null) return null;
  const inboundSpeed = v * cosDeg(inboundCorrection) + we * ce + wn * cn;
  const turning = 360 / turnRate;
  const east = -inboundSpeed * inboundSeconds * ce - we * turning; // knots times seconds
  const north = -inboundSpeed * inboundSeconds * cn - wn * turning;
  const track = directionOf(east, north);
  const correction = correctionOn(track, v, we, wn);
  if (correction === null || east * ce + north * cn > 0 || inboundSpeed <= 0) return null;
  const outboundSpeed = v * cosDeg(correction) + we * sinDeg(track) + wn * cosDeg(track);
  if (outboundSpeed <= 0) return null;
  const outboundHeading = direction(track + correction);
  return {
    outboundHeading,
    outboundSeconds: Math.hypot(east, north) / outboundSpeed,
    inboundCorrection,
    outboundCorrection: turnFrom(inbound + 180, outboundHeading),
  };
}

/**
 * The same, where the outbound leg ends at a distance from the fix, miles along the course. Method: halving on the time
 * inbound, since every longer lap ends farther out; the turn back is an arc through the air that the wind carries.
 */
export function solveRacetrackTo(
  distance: NauticalMiles,
  turns: Side,
  input: Omit<RacetrackInput, "inboundSeconds">,
): Racetrack | null {
  const { inbound, trueAirspeed: v, airEast: we, airNorth: wn, turnRate } = input;
  const ce = sinDeg(inbound);
  const cn = cosDeg(inbound);
  const side = turns === "right" ? 1 : -1;
  const reach = (inboundSeconds: Seconds): NauticalMiles => {
    const lap = solveRacetrack({ ...input, inboundSeconds });
    if (!lap) return Number.NEGATIVE_INFINITY;
    const from = lap.outboundHeading;
    const to = inbound + lap.inboundCorrection;
    const seconds = direction(side * (to - from)) / turnRate;
    const radius = (v * DEGREES_PER_RADIAN) / (side * turnRate); // knots times seconds
    const east = radius * (cosDeg(from) - cosDeg(to)) + we * seconds;
    const north = radius * (sinDeg(to) - sinDeg(from)) + wn * seconds;
    const speed = v * cosDeg(lap.inboundCorrection) + we * ce + wn * cn;
    return (speed * inboundSeconds + east * ce + north * cn) / 3600;
  };
  let [low, high] = [1, LONGEST];
  if (!(reach(high) > distance)) return null;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (reach(middle) < distance) low = middle;
    else high = middle;
  }
  return solveRacetrack({ ...input, inboundSeconds: high });
}

/** Source: E. Williams, *Aviation Formulary* V1.47, "Wind Triangles". Null where no heading holds the course. */
export function correctionOn(
  course: TrueDegrees,
  trueAirspeed: Knots,
  airEast: Knots,
  airNorth: Knots,
): TurnDegrees | null {
  const share = (airNorth * sinDeg(course) - airEast * cosDeg(course)) / trueAirspeed;
  return Math.abs(share) < 1 ? Math.asin(share) * DEGREES_PER_RADIAN : null;
}
