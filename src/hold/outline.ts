/** The racetrack as a line over the ground: two straight legs, and turns that the wind draws out into trochoids. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import { RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { Wind } from "../wind/index.ts";
import type { Racetrack } from "./facts.ts";
import { airInFrame, KNOT_SECONDS_PER_MILE, secondsToTurn, turned } from "./turning.ts";

/** A point each so many degrees of turn. Chosen: the line then leaves the arc by under 2 m at a radius of 1 NM. */
const STEP_DEG = 5;

/** One lap from the fix to the fix, NM along the inbound course (negative: before the fix) and right of it. */
export interface HoldOutline {
  readonly alongNm: Float64Array;
  readonly acrossNm: Float64Array;
  /** Rows where the outbound leg begins and ends. */
  readonly outbound: readonly [number, number];
  /** Row where the inbound leg begins; the last row is the fix again. */
  readonly inbound: number;
}

/** What of a racetrack makes its line: corrections, times between the turns, and the turns. */
export type RacetrackShape = Pick<
  Racetrack,
  | "inboundCorrectionDeg"
  | "inboundS"
  | "outboundCorrectionDeg"
  | "outboundS"
  | "turnRateDegS"
  | "turnRadiusNm"
>;

/**
 * The lap that a solved racetrack describes, in the wind that it was solved for. Closed form; it ends within 1 m of
 * the fix where the racetrack is unrounded.
 */
export function racetrackOutline(
  racetrack: RacetrackShape,
  given: { readonly inbound: TrueDegrees; readonly turns: TurnSide; readonly wind: Wind },
): HoldOutline {
  const { inboundCorrectionDeg: inbound, outboundCorrectionDeg, turnRateDegS, turnRadiusNm } = racetrack;
  const air = airInFrame(given.wind, given.inbound);
  const rate = given.turns === "right" ? turnRateDegS : -turnRateDegS;
  const speed = turnRadiusNm * turnRateDegS * RADIANS_PER_DEGREE * KNOT_SECONDS_PER_MILE;
  const outbound = 180 + outboundCorrectionDeg;
  const along = [0];
  const across = [0];
  const turn = (from: number, to: number): void => {
    const [startAlong, startAcross] = [along.at(-1)!, across.at(-1)!];
    const seconds = secondsToTurn(from, to, rate);
    const steps = Math.max(1, Math.ceil((seconds * turnRateDegS) / STEP_DEG));
    for (let i = 1; i <= steps; i++) {
      const moved = turned(from, rate, (seconds * i) / steps, speed, air);
      along.push(startAlong + moved.along);
      across.push(startAcross + moved.across);
    }
  };
  const straight = (heading: number, seconds: number): void => {
    along.push(along.at(-1)! + ((speed * cosDeg(heading) + air.along) * seconds) / KNOT_SECONDS_PER_MILE);
    across.push(across.at(-1)! + ((speed * sinDeg(heading) + air.across) * seconds) / KNOT_SECONDS_PER_MILE);
  };
  turn(inbound, outbound);
  const leg = along.length;
  straight(outbound, racetrack.outboundS);
  turn(outbound, inbound);
  const back = along.length - 1;
  straight(inbound, racetrack.inboundS);
  return {
    alongNm: Float64Array.from(along),
    acrossNm: Float64Array.from(across),
    outbound: [leg - 1, leg],
    inbound: back,
  };
}
