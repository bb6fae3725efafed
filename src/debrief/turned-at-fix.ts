/** Whether a hold that was not found may yet have been begun: its fix passed, turns enough for an entry, and passed again. */
import type { HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { OVER_FIX } from "./fix-passes.ts";

/** Turns of an entry, both ways added: a teardrop makes 210 degrees of a lap's 360, a parallel one more. FAA AIM 5-3-8 j.3. */
const ENTRY: AngleSize = 200;
/** An entry and a lap of the longest usual leg are over in this. Chosen. */
const LONGEST: Seconds = 600;

/** The finding, with both passages; null where the fix was not passed twice so, outside of what was found (`flown`). */
export function turnedAtFix(
  { fix, between }: HoldExercise,
  motion: Motion,
  flown: readonly Span[],
): Finding | null {
  const { time } = motion;
  const isFree = (row: number) =>
    flown.every(({ start, end }) => row < start || row >= end) &&
    !(between && (time[row]! < between.start || time[row]! > between.end));
  let last: number | null = null;
  let turned: AngleSize = 0;
  for (let row = 1; row < time.length; row++) {
    turned += Math.abs(turnFrom(motion.trackAngle[row - 1]!, motion.trackAngle[row]!));
    const place = { latitude: motion.latitude[row]!, longitude: motion.longitude[row]! };
    if (inverse(fix, place).distance > OVER_FIX * METRES_PER_NAUTICAL_MILE || !isFree(row)) continue;
    if (last !== null && turned >= ENTRY && time[row]! - time[last]! <= LONGEST * 1000)
      return {
        code: "turned-at-fix",
        facts: {},
        evidence: { fromUtc: utcText(time[last]!), toUtc: utcText(time[row]!) },
      };
    last = row;
    turned = 0;
  }
  return null;
}
