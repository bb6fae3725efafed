/** How a turn ended: how far its track went past the direction that was then held. */
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Seconds, TurnDegrees } from "../quantity/units.ts";
import type { Leg } from "./leg.ts";
import type { Motion } from "./motion.ts";

/** A smaller turn is a correction, and no roll-out is aimed at. Chosen. */
const LEAST: AngleSize = 45;
/** What is held is the mean track over this time after the turn came to rest. Chosen: putting 15 degrees right takes 5 to 8 s; who holds them longer has cut back to something on purpose. */
const HELD_FROM: Seconds = 8;
const HELD_TO: Seconds = 20;
/** A direction that changes by more meanwhile is not held: another turn has begun. Chosen: five times hand-flown wander. */
const HELD_WITHIN: AngleSize = 10;

/**
 * From the first moment at which a turn no longer turns to what is held after it: degrees past it, in the sense of the
 * turn positive. Null for a straight, a small turn, and where nothing is held then or the log falls silent. Hand-flown
 * wander of 2 degrees alone makes some 2 of it, because a turn comes to rest where the wander is on its side.
 */
export function turnedPast(motion: Motion, leg: Leg): TurnDegrees | null {
  const { time, trackAngle, turnRate } = motion;
  const { start, end } = leg.span;
  if (leg.kind !== "turn" || Math.abs(leg.turn) < LEAST) return null;
  const whole = motion.spans.find((s) => start >= s.start && start < s.end);
  if (!whole) return null;
  const side = Math.sign(leg.turn);
  let rest = (start + end) >> 1;
  while (rest < whole.end && side * turnRate[rest]! > 0) rest++;
  if (rest >= whole.end || time[whole.end - 1]! < time[rest]! + HELD_TO * 1000) return null;
  const held: TurnDegrees[] = [];
  for (let i = rest; time[i]! <= time[rest]! + HELD_TO * 1000; i++) {
    if (time[i]! < time[rest]! + HELD_FROM * 1000) continue;
    held.push(turnFrom(trackAngle[i]!, trackAngle[rest]!));
  }
  if (held.length === 0 || Math.max(...held) - Math.min(...held) > HELD_WITHIN) return null;
  const past = (side * held.reduce((a, b) => a + b, 0)) / held.length;
  return past < -HELD_WITHIN ? null : past; // it turned on: the turn was not over
}
