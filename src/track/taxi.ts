/** Slower than this is on the ground: there turns are corners of taxiways, and the nose points where the wheels roll. */
import type { Knots } from "../quantity/units.ts";
import type { Motion } from "./motion.ts";

/** Nothing that taxis is faster, and no aeroplane flies slower, kt; common practice, no source. */
const TAXI_SPEED = 30;
/** A small drone flies slower than aeroplanes taxi: a share of the flight's own speed is the limit then. */
const SHARE = 0.4;
/** A log that is hardly ever faster than this, kt, is of a taxi or a walk, not of a flight. */
const LEAST_FLIGHT = 25;

/** The ground speed below which the aircraft of this motion is taken to be on the ground. */
export function taxiSpeed(motion: Motion): Knots {
  const speeds = motion.groundSpeed.slice().sort();
  const fast = speeds[Math.floor(0.9 * (speeds.length - 1))] ?? 0;
  return fast < LEAST_FLIGHT ? TAXI_SPEED : Math.min(TAXI_SPEED, SHARE * fast);
}
