/** Where a final was left by a turn away, to circle or to leave, and where that led. */
import type { Runway } from "../brief/brief.ts";
import { courseBetween, courseRuler, inverse } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, Knots, NauticalMiles, Seconds } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { utcOfRow } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";

/** A turn away from the final is of so much. Chosen: beyond any correction on a final, within the 45° of a usual turn to circle with 10° of wind. */
const AWAY: AngleSize = 25;
/** Before it the track was along the final. As of established. */
const ALONG: AngleSize = 10;
/** On or beside the runway by this still is on its field. Chosen: turn-offs and aprons. */
export const ON_FIELD: NauticalMiles = 0.5;
/** Slower than this there has landed. Common practice, no source: nothing flies an approach so slowly over the ground. */
export const ROLLING: Knots = 35;
/** A landing that a circling led to is looked for so long. Chosen: twice a circuit in a light aircraft. */
const CIRCLING: Seconds = 600;

export interface BreakOff {
  /** The last row before the turn away. */
  readonly row: number;
  readonly side: "left" | "right";
}

/**
 * Where the final was left for good: a turn away by `AWAY` that takes the needle over full scale up to `end`, or that
 * the track still stands off by there. Null where it was flown to the end, and where the needle was lost without such
 * a turn. `landed`: on the runway, where a turn so near to it was none away.
 */
export function brokenOff(rows: ApproachRows, start: number, end: number, landed: boolean): BreakOff | null {
  if (!rows.timed) return null;
  let last = end - 1;
  while (last >= start && !(Math.abs(rows.needle[last]!) <= 1)) last--;
  if (last < start) return null;
  const within = last === end - 1;
  if (within && landed) return null;
  const side = Math.sign(within ? rows.trackErrorDeg[last]! : rows.crossTrackNm[last + 1]!);
  let row = last;
  while (row > start && !(Math.abs(rows.trackErrorDeg[row]!) <= ALONG)) row--;
  // turned so from the start on, it was never along the final before
  if (within && (row === start || Math.abs(rows.trackErrorDeg[last]!) < AWAY)) return null;
  for (let i = row; i < end; i++) {
    if (rows.trackErrorDeg[i]! * side >= AWAY)
      return { row: turnBegun(rows, [start, row, i], side), side: side > 0 ? "right" : "left" };
    if (i > last + 1 && Math.abs(rows.trackErrorDeg[i]!) <= ALONG) return null;
  }
  return null;
}

/** The row before a turn to a side began that goes on at `turning` and has brought the track far off at `off`: where its rate was a half of its most. */
function turnBegun(
  { turnRate, gapBefore }: ApproachRows,
  [start, turning, off]: readonly [start: number, turning: number, off: number],
  side: number,
): number {
  const most = turnRate.subarray(turning, off + 1).reduce((top, rate) => Math.max(top, rate * side), 0);
  let row = turning;
  while (row > start && !gapBefore[row] && turnRate[row]! * side > most / 2) row--;
  return row;
}

/** The landing on the same runway, either way, that followed; null where none did within the time that circling takes. `from`: row of the motion. */
function landingAfter(
  { threshold, end }: Runway,
  motion: Motion,
  from: number,
): NonNullable<ApproachFacts["brokeOff"]>["landed"] {
  const length = nauticalMilesFromMetres(inverse(threshold, end).distance);
  const runway = courseBetween(threshold, end);
  const ruler = courseRuler(runway);
  const until = motion.time[from]! + CIRCLING * 1000;
  for (let row = from; row < motion.length && motion.time[row]! <= until; row++) {
    if (motion.groundSpeed[row]! >= ROLLING) continue;
    ruler.measure(motion.latitude[row]!, motion.longitude[row]!);
    const along = nauticalMilesFromMetres(ruler.along);
    const beside = Math.abs(nauticalMilesFromMetres(ruler.across));
    if (along < -ON_FIELD || along > length + ON_FIELD || beside > ON_FIELD) continue;
    const turn = turnFrom(runway.azimuth, motion.trackAngle[row]!);
    const way = Math.abs(turn) < 45 ? "same" : Math.abs(turn) > 135 ? "other-way" : "across";
    return { utc: utcText(motion.time[row]!), way };
  }
  return null;
}

/** Null where the final was not left. */
export function brokeOffFacts(
  runway: Runway,
  rows: ApproachRows,
  off: BreakOff | null,
  motion: Motion | null,
): ApproachFacts["brokeOff"] {
  if (!off || !motion) return null;
  const { row, side } = off;
  return {
    utc: utcOfRow(rows, row)!,
    distanceNm: rows.distanceNm[row]!,
    altitudeFt: Number.isNaN(rows.altitudeFt[row]!) ? null : rows.altitudeFt[row]!,
    side,
    landed: landingAfter(runway, motion, rows.pathStart + row),
  };
}
