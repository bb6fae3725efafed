/** Height held, as the log gives it: GPS height is not an altimeter, but its changes are true. */
import { utcText } from "../quantity/time.ts";
import type { FeetMsl, UtcMillis } from "../quantity/units.ts";
import {
  type SilentEdge,
  SPOKEN_FT,
  strayedInHeight,
  unseenHalfRange,
  unseenOf,
} from "../quantity/unseen.ts";
import { altimeterDoubt95, HEIGHT_CHANGE_95, heightHeld, heightReached } from "../track/index.ts";
import type { HoldFacts, HoldLap } from "./facts.ts";
import { type HoldFrame, meanBetween, rowsBetween, spedRows } from "./frame.ts";

/** Null where the log has no heights. The worst is farthest from the target, or from the mean. */
export function heightBetween(
  frame: HoldFrame,
  from: UtcMillis,
  to: UtcMillis,
  target: FeetMsl | null,
): HoldLap["altitude"] {
  const mean = meanBetween(frame, frame.altitude, from, to);
  if (Number.isNaN(mean)) return null;
  const { start, end } = rowsBetween(frame, from, to);
  let worst = start;
  const off = (i: number) => Math.abs(frame.altitude[i]! - (target ?? mean));
  for (let i = start; i < end; i++) if (off(i) > off(worst)) worst = i;
  return { meanFt: mean, worstFt: frame.altitude[worst]!, worstUtc: utcText(frame.time[worst]!) };
}

/** Of the whole hold; where it began on the way to a briefed height, from where the height that was held was come to. */
export function heightOfHold(
  frame: HoldFrame,
  begin: UtcMillis,
  to: UtcMillis,
  target: FeetMsl | null,
): HoldFacts["altitude"] {
  if (Number.isNaN(meanBetween(frame, frame.altitude, begin, to))) return null;
  const flown = rowsBetween(frame, begin, to);
  const clock = frame.time.map((t) => (t - frame.time[0]!) / 1000);
  const { row, onWay, allAlong } = heightHeld(clock, frame.altitude, flown, target);
  const from = onWay ? frame.time[row]! : begin;
  const mean = meanBetween(frame, frame.altitude, from, to);
  const { start, end } = rowsBetween(frame, from, to);
  let [lowest, highest] = [mean, mean];
  const worst = heightBetween(frame, from, to, target)!;
  for (let i = start; i < end; i++) {
    lowest = Math.min(lowest, frame.altitude[i]!);
    highest = Math.max(highest, frame.altitude[i]!);
  }
  const silent = unseenOf(
    spedRows(frame),
    { start, end },
    frame.altitude,
    (_, s) => strayedInHeight(s),
    onWay ? silentBefore(frame, start) : [],
  );
  const unseen = unseenHalfRange(silent, lowest, highest, SPOKEN_FT);
  return {
    targetFt: target,
    meanFt: mean,
    lowestFt: lowest,
    highestFt: highest,
    change95Ft: HEIGHT_CHANGE_95,
    worstFt: worst.worstFt,
    altimeter95Ft: altimeterDoubt95(worst.worstFt),
    worstUtc: worst.worstUtc,
    ...(allAlong ? { onPurpose: allAlong } : {}),
    ...(onWay ? { reached: heightReached(onWay, utcText(from)) } : {}),
    ...(unseen ? { unseenRange: unseen } : {}),
  };
}

/** The silence of the log that ends at a row. */
function silentBefore({ time, motion, start }: HoldFrame, row: number): SilentEdge[] {
  if (row === 0 || !motion.spans.some((s) => s.start === start + row)) return [];
  return [{ row, seconds: (time[row]! - time[row - 1]!) / 1000 }];
}
