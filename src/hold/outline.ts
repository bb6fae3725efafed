/** The racetrack as a line over the ground: two straight legs, and turns that the wind draws out into trochoids. */
import type { Course } from "../geodesy/course.ts";
import { positionOn } from "../geodesy/index.ts";
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import { metresFromNauticalMiles, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import { airInFrame, KNOT_SECONDS_PER_MILE, secondsToTurn, turned } from "../wind/index.ts";
import type { Racetrack } from "./facts.ts";
import type { HoldQuestion } from "./racetrack-question.ts";
import type { RacetrackOutline } from "./series.ts";

/** A point each so many degrees of turn. Chosen: the line then leaves the arc by under 2 m at a radius of 1 NM. */
const STEP_DEG = 5;

/** One lap from the fix to the fix, NM along the inbound course (negative: before the fix) and right of it. */
export type HoldOutline = Pick<RacetrackOutline, "alongNm" | "crossTrackNm">;

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
  given: Pick<HoldQuestion, "inbound" | "turns" | "wind">,
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
  straight(outbound, racetrack.outboundS);
  turn(outbound, inbound);
  straight(inbound, racetrack.inboundS);
  return { alongNm: Float64Array.from(along), crossTrackNm: Float64Array.from(across) };
}

/** The same with its positions, for maps. */
export function outlineOf(question: HoldQuestion, racetrack: Racetrack, course: Course): RacetrackOutline {
  const { alongNm, crossTrackNm } = racetrackOutline(racetrack, question);
  const places = Array.from(alongNm, (along, i) =>
    positionOn(course, metresFromNauticalMiles(along), metresFromNauticalMiles(crossTrackNm[i]!)),
  );
  return {
    alongNm,
    crossTrackNm,
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
  };
}
