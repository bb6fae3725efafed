/**
 * The legs that close a racetrack in a steady wind: for a time outbound, a time inbound, or a distance.
 *
 * Both turns of a lap add up to a full circle, so through the air they lead nowhere; meanwhile the wind moves the
 * aircraft by w * T2, T2 = 360 / rate. The outbound leg must undo the inbound leg and that drift:
 * D = -(Gi Ti) c - w T2. Whence the law sin(outbound correction) = (1 + T2 / To) * sin(inbound correction): three
 * times for 60 s outbound at 3 deg/s, twice for 120 s. Own derivation; the tests fly it by numerical integration.
 * Left out: the time of rolling in and out, and a wind that changes during the lap.
 */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { type InFrame, KNOT_SECONDS_PER_MILE, secondsToTurn, turned } from "../wind/index.ts";
import type { Framed, HoldLeg } from "./racetrack-question.ts";

/** Nobody flies a longer outbound leg, s: where the search for a distance ends. Chosen. */
const LONGEST: Seconds = 3600;

export interface Legs {
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

/** The time inbound that the drift of the turns alone asks for; 0 where it leads toward the fix. */
export const leastInbound = ({ air, turning, inboundSpeed }: Framed): Seconds =>
  Math.max(0, (-air.along * turning) / inboundSpeed);

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
export function abeamAfter(frame: Framed, { outbound, outboundSeconds }: Legs): Seconds | null {
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

/** The clock of an outbound leg: from abeam the fix or from wings level, whichever is later; 0 where it ends before abeam. */
function clockOfLegs(frame: Framed, legs: Legs): Seconds {
  const abeam = abeamAfter(frame, legs);
  if (abeam === null) return 0;
  const turn = secondsToTurn(frame.inbound, legs.outbound, frame.rate);
  return Math.min(legs.outboundSeconds, turn + legs.outboundSeconds - abeam);
}

/** For a time by the clock: the leg between the turns that shows it, by halving; every longer leg shows more. */
function forClock(frame: Framed, seconds: Seconds): Legs | null {
  const shown = (time: Seconds): Seconds => {
    const legs = forOutbound(frame, time);
    return legs ? clockOfLegs(frame, legs) : 0;
  };
  let [low, high] = [seconds, LONGEST];
  if (shown(low) >= seconds) return forOutbound(frame, low);
  if (!(shown(high) >= seconds)) return null;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (shown(middle) < seconds) low = middle;
    else high = middle;
  }
  // where shorter legs undo no drift, the shortest that does may show more
  return shown(high) - seconds < 1e-6 ? forOutbound(frame, high) : null;
}

/** The legs as they are given; null where they do not close. Throws a RangeError for a leg that is not positive. */
export function legsFor(frame: Framed, leg: HoldLeg): Legs | null {
  const given: number = leg.by === "distance" ? leg.distance : leg.seconds;
  if (!(given > 0)) throw new RangeError(`invalid leg: ${given}`);
  if (leg.by === "distance") return forDistance(frame, given);
  if (leg.by === "outbound-clock") return forClock(frame, given);
  return leg.by === "inbound-time" ? forInbound(frame, given) : forOutbound(frame, given);
}
