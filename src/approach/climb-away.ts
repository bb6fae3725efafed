/** The climb away from a final: where it began, be it pulled or gentle. */
import type { Feet, FeetPerMinute, Seconds, Share } from "../quantity/units.ts";
import { type Moment, meanOf, passing, rowsWithin } from "./column.ts";
import type { ApproachRows } from "./rows.ts";

/** Gaining this much above the lowest is climbing away. Chosen: more than a level-off at a minimum wanders. */
const CLIMBED: Feet = 150;
/** A climb begins where the vertical speed has made this share of its change: the rest of the pull is the aircraft's. Tuned on simulation seeds 1-40. */
const ONSET: Share = 0.2;
/** The vertical speed before a climb is looked for within so many seconds of its onset, and after. Tuned likewise. */
const BEFORE: readonly [Seconds, Seconds] = [20, 7];
const AFTER: Seconds = 15;
/** Climbing: beyond level-flight wander. Chosen. */
const CLIMBING: FeetPerMinute = 200;
/** A climb that steepened was begun gently before: rising so fast over so long, and so far in all. Chosen: above level-flight wander of 20 ft over a minute. */
const GENTLE: FeetPerMinute = 50;
const GENTLE_OVER: Seconds = 20;
const GENTLE_GAIN: Feet = 30;
/** It began where the height last stood within this of where it turned. Chosen: what a smoothed height strays in seconds. */
const TURNED: Feet = 3;

export interface ClimbAway {
  readonly start: Moment;
  readonly lowest: number;
}

/** The climb after the lowest point: null where the log does not gain enough above it. */
export function climbAway(rows: ApproachRows, from: number): ClimbAway | null {
  if (!rows.timed) return null;
  let lowest = from;
  for (let i = from; i < rows.length; i++) {
    if (!(rows.altitudeFt[i]! >= rows.altitudeFt[lowest]!)) lowest = i;
    if (!(rows.altitudeFt[i]! - rows.altitudeFt[lowest]! >= CLIMBED)) continue;
    let climbing = i;
    while (climbing > lowest && rows.verticalFpm[climbing - 1]! > CLIMBING) climbing--;
    const pulled = onsetOf(rows, from, climbing);
    const turned = turnedBefore(rows, lowest, pulled.row);
    return { start: turned === null ? pulled : onsetOf(rows, from, turned), lowest };
  }
  return null;
}

/** Where the vertical speed set out for that of a climb, looked for back from a row in it. */
function onsetOf(rows: ApproachRows, from: number, climbing: number): Moment {
  const at = rows.timeMs[climbing]!;
  const before = rowsWithin(rows, at - BEFORE[0] * 1000, at - BEFORE[1] * 1000);
  const after = rowsWithin(rows, at, at + AFTER * 1000);
  const mean = meanOf(rows.verticalFpm, Math.max(from, before.start), before.end);
  const was = Number.isNaN(mean) ? 0 : mean;
  let will = rows.verticalFpm[climbing]!;
  for (let k = after.start; k < after.end; k++) will = Math.max(will, rows.verticalFpm[k]!);
  const onset = was + ONSET * (will - was);
  let row = climbing;
  while (row > from && rows.verticalFpm[row]! > onset) row--;
  const start = passing(rows.verticalFpm, onset, "rising", row, Math.min(row + 2, rows.length));
  return start ?? { row, share: 0 };
}

/** The row where the height turned before one from which on it was pulled up, the rise between without a stop; null where it rose by little. */
function turnedBefore(
  { altitudeFt, timeMs, gapBefore }: ApproachRows,
  lowest: number,
  pulled: number,
): number | null {
  const windowBefore = (row: number): number => {
    let first = row;
    while (first > lowest && !gapBefore[first] && timeMs[row]! - timeMs[first - 1]! <= GENTLE_OVER * 1000)
      first--;
    return first;
  };
  const rises = (row: number): boolean => {
    const first = windowBefore(row);
    const minutes = (timeMs[row]! - timeMs[first]!) / 60_000;
    return altitudeFt[row]! - altitudeFt[first]! > GENTLE * minutes;
  };
  let row = pulled;
  while (row > lowest && rises(row)) row--;
  const first = windowBefore(row);
  let low = first;
  for (let i = first; i <= row; i++) if (altitudeFt[i]! < altitudeFt[low]!) low = i;
  let turned = low;
  while (turned < row && altitudeFt[turned + 1]! - altitudeFt[low]! < TURNED) turned++;
  return altitudeFt[pulled]! - altitudeFt[turned]! >= GENTLE_GAIN ? turned : null;
}
