/** The descent that led to a row: where it began, and from which height. */
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Feet, FeetMsl, Seconds } from "../quantity/units.ts";
import type { Column } from "./track.ts";

export interface DescentFound {
  /** The row where the height before the descent was left. */
  readonly start: number;
  /** The height that was held before. */
  readonly from: FeetMsl;
}

/** A height is higher than another from this on. Chosen: three times a hand-flown wander of 20 ft. */
const STEP: Feet = 60;
/** Level for longer than this, what comes after is a descent of its own. Chosen: a step-down is shorter, a cruise longer. */
const LEVEL_FOR: Seconds = 180;
/** ... but at the height that was wanted, or less than 600 ft below it, one who came down early stays as long as it takes. Chosen: 30 NM in a light aircraft. */
const ARRIVED_FOR: Seconds = 1200;
/** Lower than this before, there was a climb in between. Chosen: beyond any wander. */
const CLIMBED: Feet = 300;
/** ... but who came down through the height that was wanted and climbed back to it flew one descent. Chosen: more is another exercise. */
const CLIMBED_BACK: Feet = 600;
/** So far below the highest, the height held before has been left for good. Chosen: wander and a receiver's slow error together stay within. */
const LEFT: Feet = 150;
/** Less than this lost is no descent. */
const LEAST: Feet = LEFT;
/** The height before is the middle one of this long before it was left. Chosen: a hand-flown height wanders once or twice in it. */
const BEFORE: Seconds = 150;
/** Level within so much for so long: a level-off. Chosen: under 180 ft/min, longer than a wander. */
const LEVEL_WITHIN: Feet = 60;
const LEVEL_OFF: Seconds = 20;
/** The beginning is told by the first part of the descent: from so far below the height before, over so much. Chosen: beyond wander, short against a descent. */
const BELOW: Feet = 80;
const FIRST_PART: Feet = 400;

/**
 * The descent that ends at, or goes on at, a row; null where less than 150 ft were lost. Going back, it ends where no
 * greater height comes for 3 minutes, or where a climb stands. The beginning is where the straight line through its
 * first part meets the height before: some seconds after the pilot's push, as an aircraft takes them to follow.
 *
 * `clock` in seconds, rising; rows without height are passed over. `wanted`: the height to be reached there; level at it
 * counts for up to 20 minutes, and so does a climb back to it from less than 600 ft below.
 */
export function descentBefore(
  clock: Float64Array,
  altitude: Column<FeetMsl>,
  row: number,
  wanted: FeetMsl = Number.NaN,
): DescentFound | null {
  const arrived = () => high < wanted + LEFT && high > wanted - CLIMBED_BACK;
  const over = () =>
    arrived() ? { seconds: ARRIVED_FOR, feet: CLIMBED_BACK } : { seconds: LEVEL_FOR, feet: CLIMBED };
  let high = altitude[row]!;
  let top = row;
  let i = row;
  for (; i >= 0; i--) {
    const height = altitude[i]!;
    if (Number.isNaN(height)) continue;
    if (!(height <= high + STEP)) {
      high = height;
      top = i;
    } else if (height < high - over().feet || clock[top]! - clock[i]! > over().seconds) break;
  }
  if (Number.isNaN(high) || high - altitude[row]! < LEAST) return null;
  let left = row;
  while (left > 0 && !(altitude[left]! >= high - LEFT)) left--;
  const since = Math.max(i + 1, firstAtOrAfter(clock, clock[left]! - BEFORE));
  const from = median(altitude.subarray(since, left + 1).filter((height) => height >= high - 2 * STEP));
  if (!(from - altitude[row]! >= LEAST)) return null;
  return { start: beginning(clock, altitude, since, left, row, from), from };
}

/**
 * The descent to a row that follows another one, whose height was wanted at an earlier row: never begun before that. Where
 * both were flown as one, it began where the first level-off between them ended, else at that earlier row.
 */
export function descentAfter(
  clock: Float64Array,
  altitude: Column<FeetMsl>,
  row: number,
  wanted: FeetMsl,
  earlier: number,
): DescentFound | null {
  const whole = descentBefore(clock, altitude, row, wanted);
  if (!whole || whole.start >= earlier) return whole;
  const level = levelOff(clock, altitude, earlier, row, wanted + LEFT);
  if (level !== null) {
    const own = descentBefore(clock.subarray(level), altitude.subarray(level), row - level, wanted);
    if (own) return { ...own, start: own.start + level };
  }
  let known = earlier;
  while (known > 0 && Number.isNaN(altitude[known]!)) known--;
  const from = altitude[known]!;
  return from - altitude[row]! >= LEAST ? { start: earlier, from } : null;
}

/** The first row from which the height stays level between two rows, above a height; null where it never does. Rows without a height are passed over. */
function levelOff(
  clock: Float64Array,
  altitude: Column<FeetMsl>,
  start: number,
  end: number,
  above: FeetMsl,
): number | null {
  for (let i = start; i < end && !(altitude[i]! <= above); i++) {
    if (Number.isNaN(altitude[i]!)) continue;
    let [low, high] = [altitude[i]!, altitude[i]!];
    for (let k = i; k < end; k++) {
      if (Number.isNaN(altitude[k]!)) continue;
      [low, high] = [Math.min(low, altitude[k]!), Math.max(high, altitude[k]!)];
      if (high - low > LEVEL_WITHIN) break;
      if (clock[k]! - clock[i]! >= LEVEL_OFF) return i;
    }
  }
  return null;
}

/** The row where the line through the first part of the descent meets the height before it. */
function beginning(
  clock: Float64Array,
  altitude: Float64Array,
  since: number,
  left: number,
  row: number,
  from: FeetMsl,
): number {
  const last = from - BELOW - Math.min(FIRST_PART, (from - altitude[row]!) / 2);
  let first = left;
  while (first > since && altitude[first - 1]! < from - BELOW) first--;
  let [n, st, sh, stt, sth] = [0, 0, 0, 0, 0];
  for (let i = first; i <= row && !(altitude[i]! < last); i++) {
    if (!(altitude[i]! < from - BELOW)) continue; // NaN too
    const t = clock[i]! - clock[first]!;
    n++;
    st += t;
    sh += altitude[i]!;
    stt += t * t;
    sth += t * altitude[i]!;
  }
  const slope = (n * sth - st * sh) / (n * stt - st * st);
  if (!(slope < 0)) return left;
  const meets = clock[first]! + (from - (sh - slope * st) / n) / slope;
  return Math.min(row, Math.max(since, firstAtOrAfter(clock, meets)));
}

function median(values: Float64Array): number {
  const sorted = values.sort();
  const n = sorted.length;
  return n % 2 ? sorted[n >> 1]! : (sorted[n / 2 - 1]! + sorted[n / 2]!) / 2;
}
