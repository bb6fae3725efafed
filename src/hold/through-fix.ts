/** A lap is flown over the fix at its two ends only: one that comes over it in between is none, and what was held ends before it. */
import { measureAround } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { NauticalMiles, Seconds, UtcMillis } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { Motion } from "../track/motion.ts";
import type { FoundHold } from "./found.ts";
import { onFrom } from "./one-after-another.ts";
import { slowness } from "./slowness.ts";
import type { TurnsInARow } from "./turns-in-a-row.ts";

const SECONDS_PER_HOUR = 3600;
/** Over the fix. Chosen: a turn at rate one is four times as wide at the speed of light aircraft. */
const OVER: NauticalMiles = 0.2;
/** Away from it, before and after: so long a flight, at rate one. Chosen: a turn is 38 s wide, and wind carries one of more than half a circle back over the fix. */
const AWAY: Seconds = 45;

export interface ThroughFix {
  /** Which lap it was not. */
  readonly lap: number;
  readonly time: UtcMillis;
  /** The row from which the way to that pass led back. */
  readonly wayBack: number;
}

/** A row of turns, and the flight as it shows how it was entered. */
export interface SeenRow {
  readonly row: TurnsInARow;
  readonly motion: Motion;
}

/** The first; null where every lap is one. */
export function throughFix(motion: Motion, { fix, laps }: FoundHold): ThroughFix | null {
  for (const [lap, { outboundTurn, inbound }] of laps.entries()) {
    const [start, end] = [outboundTurn.start, inbound.end];
    const speed = median(motion.groundSpeed.slice(start, end));
    const away = (AWAY * slowness(speed) * speed) / SECONDS_PER_HOUR;
    const latitude = motion.latitude.subarray(start, end);
    const { distance } = measureAround(fix, latitude, motion.longitude.subarray(start, end));
    const off = Array.from(distance, nauticalMilesFromMetres);
    let nearest = off.findIndex((d) => d > away);
    const back = off.findLastIndex((d) => d > away);
    for (let k = nearest; k >= 0 && k < back; k++) if (off[k]! < off[nearest]!) nearest = k;
    if (nearest < 0 || off[nearest]! > OVER) continue;
    const before = off.slice(0, nearest);
    return { lap, time: motion.time[start + nearest]!, wayBack: start + before.indexOf(Math.max(...before)) };
  }
  return null;
}

/** The row up to the lap that was none, and the row from that pass of the fix on, with what is seen of each. */
export function partedThere(
  motion: Motion,
  row: TurnsInARow,
  { laps }: FoundHold,
  { lap, time, wayBack }: ThroughFix,
): SeenRow[] {
  const begins = row.arms.map(({ start }) => motion.time[start]!);
  const armAt = (t: UtcMillis) =>
    Math.max(
      0,
      begins.findLastIndex((begin) => begin <= t),
    );
  const before = row.arms.slice(0, armAt(laps[lap]!.times.start) + 1);
  return [
    ...(before.length < row.arms.length ? [{ motion, row: { ...row, arms: before } }] : []),
    { motion: onFrom(motion, wayBack), row: { ...row, arms: row.arms.slice(armAt(time)) } },
  ].filter(({ row: { arms } }) => arms.length > 2);
}
