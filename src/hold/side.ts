/** The side away from the turns: how long and how far. Geometry of the inbound course, not a protected airspace. */
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import type { HoldFacts } from "./facts.ts";
import { across95At, type HoldFrame, rowsBetween } from "./frame.ts";

/** Beyond the inbound course by more than the doubt of a position, between two times; `side` is the holding side. */
export function nonHoldingSide(
  frame: HoldFrame,
  side: 1 | -1,
  from: UtcMillis,
  to: UtcMillis,
): HoldFacts["nonHoldingSide"] {
  const { start, end } = rowsBetween(frame, from, to);
  let [milliseconds, farthest, row] = [0, 0, -1];
  for (let i = start; i < end; i++) {
    const beyond = -side * frame.across[i]!;
    if (beyond <= across95At(frame, frame.time[i]!)) continue;
    milliseconds += i > start ? frame.time[i]! - frame.time[i - 1]! : 0;
    if (beyond > farthest) [farthest, row] = [beyond, i];
  }
  return {
    seconds: milliseconds / 1000,
    farthestNm: farthest,
    farthestUtc: row < 0 ? null : utcText(frame.time[row]!),
  };
}
