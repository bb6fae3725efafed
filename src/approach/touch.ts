/** Over the runway and away again: whether the wheels were on it, or only may have been. */
import type { Feet, FeetPerMinute, Knots, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { ClimbAway } from "./climb-away.ts";
import { ceilRow, type Moment, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";

/** Over the runway lower than this, with its doubt, may have been a touch. Chosen: gear and aerial above ground. */
const TOUCH: Feet = 20;
/** Heights of seconds stray by as much again. Chosen: what a receiver's height wanders over a roll. */
const NEAR_LOWEST: Feet = 2 * TOUCH;
/** On the wheels along the runway: so slow a change of height for so long. Chosen: smoothed as it is, a climb out of a descent pulled at 0.03 g or more is through it within 7 s. */
const LEVEL_ROLL: FeetPerMinute = 200;
const ROLL_FOR: Seconds = 8;
/** Beside its centre line by no more, and past its end. Chosen: as of the rolls that heights are tied to. */
const RUNWAY_WIDE: NauticalMiles = 0.08;
/**
 * Slowed on the runway to this share of the ground speed over the threshold, the wing no longer carried it: an approach
 * is flown at 1.3 times the stalling speed (14 CFR 23.73, from memory), and into wind the share on the ground is less.
 * A final flown faster slows as much to its climb, so that a height that stays as in a roll is asked for too.
 */
const ROLLED: Share = 1 / 1.3;
/** On the wheels a height strays by less than this from one moment, for `ROLL_FOR` before it and after: what `LEVEL_ROLL` gains in that time. */
const STRAYS: Feet = (LEVEL_ROLL / 60) * ROLL_FOR;

export interface OverRunway {
  /** The row where it was slowest on its wheels; null where speed and height together show no roll. */
  readonly slowest: number | null;
  /** How long it was level over the runway, as on its wheels; null where never for long. */
  readonly levelS: Seconds | null;
  /** A height within its doubt of the ground: alone it shows no touch, since a climb begun late comes as low. */
  readonly low: boolean;
}

/** What a way over the runway into a climb shows. `length`: of the runway. */
export function overRunway(
  rows: ApproachRows,
  threshold: Moment,
  { lowest }: Pick<ClimbAway, "lowest">,
  length: NauticalMiles,
): OverRunway {
  const low = isLow(rows, lowest);
  const slow = slowRows(rows, threshold, lowest, length);
  const rolled = low && slow.some((i) => stays(rows, i, ROLL_FOR));
  let [longest, since] = [0, -1];
  for (let i = ceilRow(threshold); i < rows.length && rows.alongNm[i]! < length + RUNWAY_WIDE; i++) {
    const above = rows.altitudeFt[i]! - rows.altitudeFt[lowest]!;
    const beside = Math.abs(rows.crossTrackNm[i]!) < RUNWAY_WIDE;
    if (!(beside && above < TOUCH && Math.abs(rows.verticalFpm[i]!) < LEVEL_ROLL)) since = -1;
    else if (since < 0 || rows.gapBefore[i]) since = i;
    if (since >= 0) longest = Math.max(longest, (rows.timeMs[i]! - rows.timeMs[since]!) / 1000);
  }
  const slower = (a: number, b: number) => (rows.groundSpeedKt[b]! < rows.groundSpeedKt[a]! ? b : a);
  return { slowest: rolled ? slow.reduce(slower) : null, levelS: longest >= ROLL_FOR ? longest : null, low };
}

/** Whether a log that shows no climb ends in the roll, slowed on the runway as only wheels are. Its flare may be seconds before. */
export function endsInRoll(rows: ApproachRows, threshold: Moment | null, length: NauticalMiles): boolean {
  const lowest = rows.length - 1;
  if (threshold === null || !isLow(rows, lowest)) return false;
  return slowRows(rows, threshold, lowest, length).some((i) => stays(rows, i, 0));
}

/** The ground is within the doubt of the height. */
const isLow = ({ heightFt, heightSdFt }: ApproachRows, row: number): boolean =>
  !(heightFt[row]! >= TOUCH + 2 * heightSdFt[row]!);

/** Rows along the runway, near the lowest, that are as slow as in a roll. */
function slowRows(rows: ApproachRows, threshold: Moment, lowest: number, length: NauticalMiles): number[] {
  const limit: Knots = ROLLED * valueAt(rows.groundSpeedKt, threshold);
  const slow: number[] = [];
  for (let i = ceilRow(threshold); i < rows.length && rows.alongNm[i]! < length + RUNWAY_WIDE; i++) {
    const near = rows.altitudeFt[i]! - rows.altitudeFt[lowest]! < NEAR_LOWEST;
    const beside = Math.abs(rows.crossTrackNm[i]!) < RUNWAY_WIDE;
    if (near && beside && rows.groundSpeedKt[i]! <= limit) slow.push(i);
  }
  return slow;
}

/** Whether the height stays as on wheels from so long before a row until after it, seen without a silence. */
function stays(
  { timeMs, altitudeFt, gapBefore, length }: ApproachRows,
  row: number,
  before: Seconds,
): boolean {
  const near = (i: number) => Math.abs(altitudeFt[i]! - altitudeFt[row]!) < STRAYS;
  for (let i = row - 1; i >= 0 && timeMs[row]! - timeMs[i]! <= before * 1000; i--)
    if (gapBefore[i + 1] || !near(i)) return false;
  for (let i = row + 1; i < length && timeMs[i]! - timeMs[row]! <= ROLL_FOR * 1000; i++)
    if (gapBefore[i] || !near(i)) return false;
  return true;
}

/** The roll of a touch-and-go and the climb out of it; null where there was none. */
export function touchAndGoOf(
  rows: ApproachRows,
  slowest: number | null,
  climb: ClimbAway | null,
): ApproachFacts["touchAndGo"] {
  if (slowest === null || !climb) return null;
  return {
    slowestUtc: utcOfRow(rows, slowest)!,
    slowestKt: rows.groundSpeedKt[slowest]!,
    slowestNm: rows.distanceNm[slowest]!,
    climbUtc: utcAt(rows, climb.start),
    climbNm: valueAt(rows.distanceNm, climb.start),
  };
}
