/** The ground about a hold as a flat map, and the flight over it at any moment, between the rows too. */

import { courseRuler, courseThrough, positionOn } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { Knots, Metres, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { fitCircle } from "../wind/index.ts";

/** Metres east and north of the origin. */
export interface Place {
  readonly east: Metres;
  readonly north: Metres;
}

export interface Ground {
  readonly span: Span;
  readonly origin: Position;
  readonly east: Float64Array;
  readonly north: Float64Array;
  /** Direction of the nose in the wind that fits the turns, degrees, not wrapped. */
  readonly heading: Float64Array;
  readonly airEast: Knots;
  readonly airNorth: Knots;
  readonly trueAirspeed: Knots;
  /** Flown through the air in a second. */
  readonly metres: Metres;
  /** Of its first and last row. */
  readonly times: readonly [UtcMillis, UtcMillis];
  place(time: UtcMillis): Place;
  headingAt(time: UtcMillis): TurnDegrees;
  /** The heading that holds a course in the wind. */
  headingFor(course: number): number;
  position(place: Place): Position;
  placeOf(position: Position): Place;
  /** Row whose time is the last not after. */
  rowAt(time: UtcMillis): number;
}

/** A circle that fits the ground velocities worse than this share of its radius tells no wind. Chosen. */
const WORST_FIT = 0.15;

/**
 * The rows of a span on a map about its middle: east and north along and across the geodesic that runs north there.
 * Wind and airspeed are those of the circle through the ground velocities of `turning`; none where they fit badly.
 */
export function groundOf(motion: Motion, span: Span, turning: Span): Ground {
  const { start, end } = span;
  const n = end - start;
  const middle = (turning.start + turning.end) >> 1;
  const origin = { latitude: motion.latitude[middle]!, longitude: motion.longitude[middle]! };
  const northward = courseThrough(origin, 0);
  const ruler = courseRuler(northward);
  const east = new Float64Array(n);
  const north = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    ruler.measure(motion.latitude[start + i]!, motion.longitude[start + i]!);
    east[i] = ruler.across;
    north[i] = ruler.along;
  }
  const air = airOf(motion, turning);
  const heading = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const e = motion.velocityEast[start + i]! - air.airEast;
    const nn = motion.velocityNorth[start + i]! - air.airNorth;
    const h = Math.atan2(e, nn) * DEGREES_PER_RADIAN;
    heading[i] = i === 0 ? h : heading[i - 1]! + turnFrom(heading[i - 1]!, h);
  }
  const { time, velocityEast, velocityNorth } = motion;
  const rowAt = (t: UtcMillis) =>
    Math.max(start, Math.min(end - 2, firstAtOrAfter(time, t + 1e-6, start, end) - 1));
  return {
    ...{
      span,
      origin,
      east,
      north,
      heading,
      ...air,
      metres: air.trueAirspeed * METRES_PER_SECOND_PER_KNOT,
      rowAt,
      times: [time[start]!, time[end - 1]!] as const,
    },
    place(t) {
      const k = rowAt(t);
      const seconds = (time[k + 1]! - time[k]!) / 1000;
      const u = (t - time[k]!) / 1000 / seconds;
      // cubic through both places with both velocities
      const h1 = u * u * (3 - 2 * u);
      const d0 = u * (1 - u) * (1 - u) * seconds * METRES_PER_SECOND_PER_KNOT;
      const d1 = u * u * (u - 1) * seconds * METRES_PER_SECOND_PER_KNOT;
      const i = k - start;
      return {
        east: east[i]! + h1 * (east[i + 1]! - east[i]!) + d0 * velocityEast[k]! + d1 * velocityEast[k + 1]!,
        north:
          north[i]! + h1 * (north[i + 1]! - north[i]!) + d0 * velocityNorth[k]! + d1 * velocityNorth[k + 1]!,
      };
    },
    headingAt(t) {
      const k = rowAt(t);
      const u = (t - time[k]!) / (time[k + 1]! - time[k]!);
      return heading[k - start]! + u * (heading[k + 1 - start]! - heading[k - start]!);
    },
    headingFor(course) {
      const across = air.airEast * cosDeg(course) - air.airNorth * sinDeg(course);
      return course - Math.asin(Math.max(-1, Math.min(1, across / air.trueAirspeed))) * DEGREES_PER_RADIAN;
    },
    placeOf({ latitude, longitude }) {
      ruler.measure(latitude, longitude);
      return { east: ruler.across, north: ruler.along };
    },
    position(place) {
      const { latitude, longitude } = positionOn(northward, place.north, place.east);
      return { latitude, longitude };
    },
  };
}

function airOf(motion: Motion, { start, end }: Span) {
  const circle = fitCircle(
    motion.velocityEast.subarray(start, end),
    motion.velocityNorth.subarray(start, end),
  );
  if (
    circle &&
    circle.rms < WORST_FIT * circle.trueAirspeed &&
    Math.hypot(circle.airEast, circle.airNorth) < 0.7 * circle.trueAirspeed
  )
    return { airEast: circle.airEast, airNorth: circle.airNorth, trueAirspeed: circle.trueAirspeed };
  let speed = 0;
  for (let k = start; k < end; k++) speed += motion.groundSpeed[k]! / (end - start);
  return { airEast: 0, airNorth: 0, trueAirspeed: speed };
}
