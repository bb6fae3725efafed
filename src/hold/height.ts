/** Height held, as the log gives it: GPS height is not an altimeter, but its changes are true. */
import { utcText } from "../quantity/time.ts";
import type { FeetMsl, UtcMillis } from "../quantity/units.ts";
import { SPOKEN_FT, strayedInHeight, unseenHalfRange, unseenOf } from "../quantity/unseen.ts";
import { altimeterDoubt95, HEIGHT_CHANGE_95 } from "../track/index.ts";
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

export function heightOfHold(
  frame: HoldFrame,
  from: UtcMillis,
  to: UtcMillis,
  target: FeetMsl | null,
): HoldFacts["altitude"] {
  const mean = meanBetween(frame, frame.altitude, from, to);
  if (Number.isNaN(mean)) return null;
  const { start, end } = rowsBetween(frame, from, to);
  let [lowest, highest] = [mean, mean];
  const worst = heightBetween(frame, from, to, target)!;
  for (let i = start; i < end; i++) {
    lowest = Math.min(lowest, frame.altitude[i]!);
    highest = Math.max(highest, frame.altitude[i]!);
  }
  const silent = unseenOf(spedRows(frame), { start, end }, frame.altitude, (_, s) => strayedInHeight(s));
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
    ...(unseen ? { unseenRange: unseen } : {}),
  };
}
