/** Passing the fix, over it and abeam: moments between the rows. */
import type { NauticalMiles, UtcMillis } from "../quantity/units.ts";
import { directionAt, type HoldFrame, offInbound, rowsBetween, valueAt } from "./frame.ts";

export interface Pass {
  readonly time: UtcMillis;
  /** Right of the inbound course positive. */
  readonly across: NauticalMiles;
  readonly distance: NauticalMiles;
}

/** Flown within this of the inbound course the fix is passed where it is abeam; at larger angles, where it is nearest. Chosen. */
const INBOUND_WITHIN = 60;

/** When `along` passes 0 in a way (1 forward, -1 back) between two times, in flown order. */
function crossings(frame: HoldFrame, from: UtcMillis, to: UtcMillis, way: 1 | -1): UtcMillis[] {
  const { start, end } = rowsBetween(frame, from, to);
  const found: UtcMillis[] = [];
  for (let i = Math.max(1, start); i < Math.min(frame.length, end + 1); i++) {
    const [a, b] = [frame.along[i - 1]!, frame.along[i]!];
    if (!(way * a < 0 && way * b >= 0)) continue;
    const at = frame.time[i - 1]! + (a / (a - b)) * (frame.time[i]! - frame.time[i - 1]!);
    if (at >= from && at <= to) found.push(at);
  }
  return found;
}

/** Where the way flown between two times comes nearest to the fix. */
function nearest(frame: HoldFrame, from: UtcMillis, to: UtcMillis): UtcMillis {
  const { start, end } = rowsBetween(frame, from, to);
  let [best, at] = [Number.POSITIVE_INFINITY, from];
  for (let i = Math.max(1, start); i < end; i++) {
    const [x, y] = [frame.along[i - 1]!, frame.across[i - 1]!];
    const [dx, dy] = [frame.along[i]! - x, frame.across[i]! - y];
    const length = dx * dx + dy * dy;
    const share = length > 0 ? Math.max(0, Math.min(1, -(x * dx + y * dy) / length)) : 0;
    const distance = Math.hypot(x + share * dx, y + share * dy);
    if (distance < best)
      [best, at] = [distance, frame.time[i - 1]! + share * (frame.time[i]! - frame.time[i - 1]!)];
  }
  return at;
}

const passAt = (frame: HoldFrame, time: UtcMillis): Pass => {
  const across = valueAt(frame, frame.across, time);
  return { time, across, distance: Math.hypot(across, valueAt(frame, frame.along, time)) };
};

/** The fix passed between two times, nearest to a third: abeam where it was flown inbound, else where it was nearest. */
export function passOfFix(frame: HoldFrame, from: UtcMillis, to: UtcMillis, near: UtcMillis): Pass {
  const inbound = crossings(frame, from, to, 1)
    .filter((t) => Math.abs(offInbound(frame, directionAt(frame, frame.track, t))) <= INBOUND_WITHIN)
    .sort((a, b) => Math.abs(a - near) - Math.abs(b - near))[0];
  return passAt(frame, inbound ?? nearest(frame, from, to));
}

/** The fix passed at any angle, where it was nearest between two times. */
export const nearestPass = (frame: HoldFrame, from: UtcMillis, to: UtcMillis): Pass =>
  passAt(frame, nearest(frame, from, to));

/** The last time that the fix was abeam going outbound; null where it never was between the two times. */
export const abeamOutbound = (frame: HoldFrame, from: UtcMillis, to: UtcMillis): UtcMillis | null =>
  crossings(frame, from, to, -1).at(-1) ?? null;
