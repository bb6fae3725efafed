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
 */
const ROLLED: Share = 1 / 1.3;

export interface OverRunway {
  /** The row where it was slowest on its wheels; null where the speed shows no roll. */
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
  const low = !(rows.heightFt[lowest]! >= TOUCH + 2 * rows.heightSdFt[lowest]!);
  const limit: Knots = ROLLED * valueAt(rows.groundSpeedKt, threshold);
  let slowest: number | null = null;
  let [longest, since] = [0, -1];
  for (let i = ceilRow(threshold); i < rows.length && rows.alongNm[i]! < length + RUNWAY_WIDE; i++) {
    const above = rows.altitudeFt[i]! - rows.altitudeFt[lowest]!;
    const beside = Math.abs(rows.crossTrackNm[i]!) < RUNWAY_WIDE;
    const rolling = beside && above < NEAR_LOWEST && rows.groundSpeedKt[i]! <= limit;
    if (rolling && !(rows.groundSpeedKt[i]! >= rows.groundSpeedKt[slowest ?? -1]!)) slowest = i;
    if (!(beside && above < TOUCH && Math.abs(rows.verticalFpm[i]!) < LEVEL_ROLL)) since = -1;
    else if (since < 0 || rows.gapBefore[i]) since = i;
    if (since >= 0) longest = Math.max(longest, (rows.timeMs[i]! - rows.timeMs[since]!) / 1000);
  }
  return { slowest: low ? slowest : null, levelS: longest >= ROLL_FOR ? longest : null, low };
}

/** Whether a log that shows no climb ends in the roll, slowed on the runway as only wheels are. */
export function endsInRoll(rows: ApproachRows, threshold: Moment | null, length: NauticalMiles): boolean {
  const lowest = rows.length - 1;
  return threshold !== null && overRunway(rows, threshold, { lowest }, length).slowest !== null;
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
