/** Which rows were flown: on the ground the nose points where the wheels roll, and tells nothing of the wind. */
import type { Motion } from "./motion.ts";
import { taxiSpeed } from "./taxi.ts";

/** Slow for so long, s, is on the ground. */
const GROUND_SECONDS = 5;
/** A take-off or landing roll reaches this far, s, from there, up to this share of the usual ground speed. */
const ROLL_SECONDS = 45;
const ROLL_SHARE = 0.75;

/** 1 where the aircraft is taken to fly. */
export function airborneRows(motion: Motion): Uint8Array {
  const { length, time, groundSpeed } = motion;
  const flown = new Uint8Array(length).fill(1);
  const slow = taxiSpeed(motion);
  const fast = groundSpeed.filter((v) => v > slow).sort();
  if (fast.length === 0) return flown.fill(0);
  const rolling = ROLL_SHARE * fast[fast.length >> 1]!;
  for (let k = 0; k < length; ) {
    if (groundSpeed[k]! >= slow) {
      k++;
      continue;
    }
    let end = k;
    while (end < length && groundSpeed[end]! < slow) end++;
    if (time[end - 1]! - time[k]! >= GROUND_SECONDS * 1000 || k === 0 || end === length) {
      let first = k;
      while (
        first > 0 &&
        time[k]! - time[first - 1]! < ROLL_SECONDS * 1000 &&
        groundSpeed[first - 1]! < rolling
      )
        first--;
      let last = end;
      while (
        last < length &&
        time[last]! - time[end - 1]! < ROLL_SECONDS * 1000 &&
        groundSpeed[last]! < rolling
      )
        last++;
      flown.fill(0, first, last);
    }
    k = end;
  }
  return flown;
}
