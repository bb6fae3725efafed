/** Rows of turns parted at an arm that is far longer than the legs of the hold on either side of it: how the aircraft came, or went. */
import type { Span } from "../quantity/span.ts";
import type { Seconds } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { TurnsInARow } from "./turns-in-a-row.ts";

/** Legs of a hold in one direction are timed alike: none is so many times the longest of the others. Chosen: a first leg too long by half against a last one too short by half, and some. */
const TIMES_LONGER = 2.5;
/** Shorter ones may be legs of any hold, s. Chosen: 6 NM at 100 kt. */
const LONG: Seconds = 225;
/** So many legs, one each way, show how long those of the hold are. */
const BOTH_WAYS = 2;

/** The rows that are left of one; of parts with fewer than two turns nothing is. */
export function parted(motion: Motion, row: TurnsInARow): TurnsInARow[] {
  const { arms } = row;
  const seconds = ({ start, end }: Span): Seconds =>
    (motion.time[Math.min(end, motion.length - 1)]! - motion.time[start]!) / 1000;
  // the first and the last arm lead to the row and away from it
  const legs = arms.map((arm, i) => (i === 0 || i === arms.length - 1 ? 0 : seconds(arm)));
  const farLonger = (i: number) =>
    [legs.slice(1, i).reverse(), legs.slice(i + 1, -1)].some((others) => {
      const sameWay = others.filter((_, k) => k % 2 === 1);
      return others.length >= BOTH_WAYS && legs[i]! > TIMES_LONGER * Math.max(...sameWay);
    });
  const at = legs.findIndex((leg, i) => leg > LONG && farLonger(i));
  if (at < 0) return [row];
  return [arms.slice(0, at + 1), arms.slice(at)]
    .filter((part) => part.length > BOTH_WAYS)
    .flatMap((part) => parted(motion, { ...row, arms: part }));
}
