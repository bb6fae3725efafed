/** The racetrack solved for the wind: the outbound heading and time that bring a hold back onto its course. */
import { direction, turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import { bankOfRate, KNOT_SECONDS_PER_MILE, radiusOf, secondsToTurn } from "../wind/index.ts";
import type { NoRacetrack, Racetrack } from "./facts.ts";
import { abeamAfter, leastInbound, legsFor, outboundEnd } from "./racetrack-legs.ts";
import { framed, type HoldQuestion } from "./racetrack-question.ts";

/** Flags are raised outside these: no pilot flies that. Chosen. */
const MOST_CORRECTION: AngleSize = 45;
const OUTBOUND_TIMES: readonly [Seconds, Seconds] = [15, 180];
/** Inbound corrections smaller than this make no ratio. Chosen: what a pilot cannot fly apart from zero. */
const LEAST_CORRECTION: AngleSize = 1;
/**
 * The racetrack that closes in a steady wind, or why there is none. All directions true; corrections right positive.
 * Throws a RangeError for an airspeed, rate or bank that is not positive.
 */
export function solveRacetrack(question: HoldQuestion): Racetrack | NoRacetrack {
  const frame = framed(question);
  if (!frame) return { none: "wind-too-strong" };
  const { leg, inbound, trueAirspeed } = question;
  const legs = legsFor(frame, leg);
  if (!legs) {
    const leastInboundS = leastInbound(frame);
    return leg.by === "inbound-time" && leastInboundS >= leg.seconds
      ? { none: "inbound-too-short", leastInboundS }
      : { none: "does-not-close" };
  }
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
