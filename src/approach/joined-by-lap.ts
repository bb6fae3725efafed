/** Whether a lap of a hold led onto the final: from along it, all the way round by way of an outbound leg, and back. */
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, NauticalMiles, Seconds, TrueDegrees } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** All the way round to one side, but for a lap flown loosely; to the other side no more than a correction. Chosen. */
const ROUND: AngleSize = 330;
const BACK: AngleSize = 45;
/** It was begun no farther beside the final than this: farther out it was a way round by vectors. Chosen: laps drift. */
const BESIDE: NauticalMiles = 1;
/** An outbound leg: so nearly against the final, no faster in its turn, for so long in all. Chosen: a turn once round has none. */
const OUTBOUND: AngleSize = 150;
const STRAIGHT: DegreesPerSecond = 1.2;
const LEG: Seconds = 20;

/** `across`: of the rows of the span, from the final course, metres. */
export function isLap(
  motion: Motion,
  { start, end }: Span,
  course: TrueDegrees,
  across: Float64Array,
): boolean {
  let [turned, left, right, outbound] = [0, 0, 0, 0];
  for (let i = end - 1; i > start; i--) {
    turned += turnFrom(motion.trackAngle[i]!, motion.trackAngle[i - 1]!);
    left = Math.max(left, turned);
    right = Math.max(right, -turned);
    const against = Math.abs(turnFrom(course, motion.trackAngle[i]!)) >= OUTBOUND;
    if (against && Math.abs(motion.turnRate[i]!) < STRAIGHT)
      outbound += (motion.time[i]! - motion.time[i - 1]!) / 1000;
    if (Math.abs(turned) < ROUND) continue;
    const beside = Math.abs(across[i - start]!) / METRES_PER_NAUTICAL_MILE;
    return Math.min(left, right) <= BACK && beside <= BESIDE && outbound >= LEG;
  }
  return false;
}
