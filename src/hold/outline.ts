/** A racetrack as a line over the ground, for maps and drawings: both turns in the wind, both legs. */

import type { Course } from "../geodesy/course.ts";
import { positionOn } from "../geodesy/index.ts";
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Racetrack } from "./facts.ts";
import { framed, type HoldQuestion } from "./racetrack.ts";
import type { RacetrackOutline } from "./series.ts";
import { KNOT_SECONDS_PER_MILE, secondsToTurn, turned } from "./turning.ts";

/** Points of each turn. */
const STEPS = 24;

/** From the fix through the outbound turn, outbound, the inbound turn and inbound to the fix. */
export function outlineOf(
  question: HoldQuestion,
  racetrack: Racetrack,
  course: Course,
): RacetrackOutline | null {
  const frame = framed(question);
  if (!frame) return null;
  const { air, speed, rate, inbound } = frame;
  const outbound = turnFrom(question.inbound, racetrack.outboundHeadingTrueDeg);
  let [along, across] = [0, 0];
  const points: [number, number][] = [[0, 0]];
  const turn = (from: number, to: number) => {
    const [x, y] = [along, across];
    const seconds = secondsToTurn(from, to, rate);
    for (let i = 1; i <= STEPS; i++) {
      const part = turned(from, rate, (seconds * i) / STEPS, speed, air);
      [along, across] = [x + part.along, y + part.across];
      points.push([along, across]);
    }
  };
  turn(inbound, outbound);
  const [c, s] = [cosDeg(outbound), sinDeg(outbound)];
  along += ((speed * c + air.along) * racetrack.outboundS) / KNOT_SECONDS_PER_MILE;
  across += ((speed * s + air.across) * racetrack.outboundS) / KNOT_SECONDS_PER_MILE;
  points.push([along, across]);
  turn(outbound, inbound);
  points.push([0, 0]);
  const places = points.map(([a, x]) =>
    positionOn(course, a * METRES_PER_NAUTICAL_MILE, x * METRES_PER_NAUTICAL_MILE),
  );
  return {
    alongNm: Float64Array.from(points, (p) => p[0]),
    crossTrackNm: Float64Array.from(points, (p) => p[1]),
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
  };
}
