/**
 * The racetrack solved for the wind: the outbound heading and time that bring a hold back onto its course.
 *
 * Both turns of a lap add up to a full circle, so through the air they lead nowhere; meanwhile the wind moves the
 * aircraft by w * T2, T2 = 360 / rate. The outbound leg must undo the inbound leg and that drift:
 * D = -(Gi Ti) c - w T2. Whence the law sin(outbound correction) = (1 + T2 / To) * sin(inbound correction): three
 * times for 60 s outbound at 3 deg/s, twice for 120 s. Own derivation; the tests fly it by numerical integration.
 * Left out: the time of rolling in and out, and a wind that changes during the lap.
 */
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
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
import {
  airInFrame,
  bankOfRate,
  type InFrame,
  KNOT_SECONDS_PER_MILE,
  radiusOf,
  rateOfBank,
  secondsToTurn,
  turned,
} from "../wind/index.ts";
import type { NoRacetrack, Racetrack } from "./facts.ts";

/**
 * What is given of the legs. `inbound-time`: between the turns, as US timing asks. `outbound-time`: between the
 * turns. `distance`: from the fix, along the course, to the end of the outbound leg, as a station's distance shows it
 * (slant and sideways offset left out).
 */
export type HoldLeg =
  | { readonly by: "inbound-time" | "outbound-time"; readonly seconds: Seconds }
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

/** Flags are raised outside these: no pilot flies that. Chosen. */
const MOST_CORRECTION: AngleSize = 45;
const OUTBOUND_TIMES: readonly [Seconds, Seconds] = [15, 180];
/** Inbound corrections smaller than this make no ratio. Chosen: what a pilot cannot fly apart from zero. */
const LEAST_CORRECTION: AngleSize = 1;
/** Nobody flies a longer outbound leg, s: where the search for a distance ends. Chosen. */
const LONGEST: Seconds = 3600;

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

interface Legs {
  /** Heading outbound, counted from the inbound course. */
  readonly outbound: number;
  readonly outboundSeconds: Seconds;
  readonly inboundSeconds: Seconds;
}

/** The law: for a time outbound, the heading that undoes the drift of the turns; then the time inbound follows. */
function forOutbound({ air, speed, turning, inboundSpeed }: Framed, seconds: Seconds): Legs | null {
  const across = -(air.across / speed) * (1 + turning / seconds);
  if (!(Math.abs(across) <= 1)) return null;
  const away = -Math.sqrt(1 - across * across);
  const back = -(speed * away + air.along) * seconds - air.along * turning; // knots times seconds
  if (!(back > 0)) return null;
  return {
    outbound: Math.atan2(across, away) * DEGREES_PER_RADIAN,
    outboundSeconds: seconds,
    inboundSeconds: back / inboundSpeed,
  };
}

/** For a time inbound: |D - w To| = V To, a quadratic with one positive root while the wind is weaker than the airspeed. */
function forInbound({ air, speed, turning, inboundSpeed }: Framed, seconds: Seconds): Legs | null {
  const along = -inboundSpeed * seconds - air.along * turning;
  const across = -air.across * turning;
  if (!(along < 0)) return null;
  const a = speed * speed - air.along * air.along - air.across * air.across;
  const b = along * air.along + across * air.across;
  const time = (-b + Math.sqrt(b * b + a * (along * along + across * across))) / a;
  const outbound = Math.atan2(across / time - air.across, along / time - air.along) * DEGREES_PER_RADIAN;
  return { outbound, outboundSeconds: time, inboundSeconds: seconds };
}

/** Where the outbound leg ends, NM from the fix along and across the course. */
export function outboundEnd(
  { rate, inbound, speed, air }: Framed,
  outbound: number,
  seconds: Seconds,
): InFrame {
  const turn = turned(inbound, rate, secondsToTurn(inbound, outbound, rate), speed, air);
  return {
    along: turn.along + ((speed * cosDeg(outbound) + air.along) * seconds) / KNOT_SECONDS_PER_MILE,
    across: turn.across + ((speed * sinDeg(outbound) + air.across) * seconds) / KNOT_SECONDS_PER_MILE,
  };
}

/** For a distance: the time outbound that ends there, by halving; every longer time ends farther out. */
function forDistance(frame: Framed, distance: NauticalMiles): Legs | null {
  const least = frame.turning / (frame.speed / Math.abs(frame.air.across) - 1); // below it no heading undoes the drift
  let low = Math.max(0.1, least * (1 + 1e-9));
  let high = LONGEST;
  const reach = (seconds: Seconds): number => {
    const legs = forOutbound(frame, seconds);
    return legs ? -outboundEnd(frame, legs.outbound, seconds).along : Number.NEGATIVE_INFINITY;
  };
  if (reach(low) > distance || !(reach(high) >= distance)) return null;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (reach(middle) < distance) low = middle;
    else high = middle;
  }
  return forOutbound(frame, high);
}

/** From the turn over the fix, the time until the fix is abeam again, s; null where the outbound leg ends before. */
function abeamAfter(frame: Framed, { outbound, outboundSeconds }: Legs): Seconds | null {
  const { inbound, rate, speed, air } = frame;
  const turn = secondsToTurn(inbound, outbound, rate);
  const out = turned(inbound, rate, turn, speed, air).along;
  const away = (speed * cosDeg(outbound) + air.along) / KNOT_SECONDS_PER_MILE;
  if (out > 0) return away < 0 && out <= -away * outboundSeconds ? turn - out / away : null;
  let [low, high] = [turn / 4, turn]; // forward of the fix a quarter through, behind it at the end
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (turned(inbound, rate, middle, speed, air).along > 0) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The racetrack that closes in a steady wind, or why there is none. All directions true; corrections right positive.
 * Throws a RangeError for an airspeed, rate or bank that is not positive.
 */
export function solveRacetrack(question: HoldQuestion): Racetrack | NoRacetrack {
  const frame = framed(question);
  if (!frame) return { none: "wind-too-strong" };
  const { leg, inbound, trueAirspeed } = question;
  const given: number = leg.by === "distance" ? leg.distance : leg.seconds;
  if (!(given > 0)) throw new RangeError(`invalid leg: ${given}`);
  const legs = (leg.by === "distance" ? forDistance : leg.by === "inbound-time" ? forInbound : forOutbound)(
    frame,
    given,
  );
  if (!legs) return { none: "does-not-close" };
  const outboundCorrection = turnFrom(180, legs.outbound);
  const abeam = abeamAfter(frame, legs);
  const firstTurn = secondsToTurn(frame.inbound, legs.outbound, frame.rate);
  const end = outboundEnd(frame, legs.outbound, legs.outboundSeconds);
  const [least, most] = OUTBOUND_TIMES;
  return {
    inboundHeadingTrueDeg: direction(inbound + frame.inbound),
    inboundCorrectionDeg: frame.inbound,
    inboundS: legs.inboundSeconds,
    inboundNm: (frame.inboundSpeed * legs.inboundSeconds) / KNOT_SECONDS_PER_MILE,
    outboundHeadingTrueDeg: direction(inbound + legs.outbound),
    outboundCorrectionDeg: outboundCorrection,
    outboundS: legs.outboundSeconds,
    outboundFromAbeamS: abeam === null ? null : firstTurn + legs.outboundSeconds - abeam,
    outboundEndAlongNm: end.along,
    outboundEndAcrossNm: end.across,
    factor: factorOf(outboundCorrection, frame.inbound),
    turnRateDegS: Math.abs(frame.rate),
    bankDeg: bankOfRate(frame.rate, trueAirspeed),
    turnRadiusNm: radiusOf(frame.rate, trueAirspeed),
    lapS: frame.turning + legs.outboundSeconds + legs.inboundSeconds,
    flags: [
      ...(Math.abs(outboundCorrection) > MOST_CORRECTION ? (["correction-over-45"] as const) : []),
      ...(legs.outboundSeconds < least || legs.outboundSeconds > most
        ? (["outbound-outside-15-to-180-s"] as const)
        : []),
    ],
  };
}

/** Outbound correction over the inbound one, to the other side positive; null where the inbound one is next to nothing. */
export function factorOf(outboundCorrection: number, inboundCorrection: number): number | null {
  return Math.abs(inboundCorrection) < LEAST_CORRECTION ? null : -outboundCorrection / inboundCorrection || 0;
}
