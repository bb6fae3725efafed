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

/** A height counts as left, or as higher, from this on. Chosen: three times a hand-flown wander of 20 ft. */
const STEP: Feet = 60;
/** Level for longer than this, what comes after is a descent of its own. Chosen: a step-down is shorter, a cruise longer. */
const LEVEL_FOR: Seconds = 180;
/** Lower than this before, there was a climb in between. Chosen: beyond any wander. */
const CLIMBED: Feet = 300;
/** Less than this lost is no descent. Chosen: the 100 ft that a held height may stray to one side, and half again. */
const LEAST: Feet = 150;
/** The first part of the descent by which its beginning is told. Chosen: short against a descent, long against wander. */
const FIRST_PART: Feet = 400;
/** The height before is the middle one of this long. Chosen: the time in which a hand-flown height wanders once. */
const BEFORE: Seconds = 60;

/**
 * The descent that ends at, or goes on at, a row; null where less than 150 ft were lost. Going back, it ends where no
 * greater height comes for 3 minutes, or where a climb stands. The beginning is where the straight line through its
 * first 400 ft meets the height before: within about 5 s of the pilot's push, as an aircraft takes some to follow.
 *
 * `clock` in seconds, rising; rows without height are passed over.
 */
export function descentBefore(
  clock: Float64Array,
  altitude: Column<FeetMsl>,
  row: number,
): DescentFound | null {
  let high = altitude[row]!;
  let top = row;
  let i = row;
  for (; i >= 0; i--) {
    const height = altitude[i]!;
    if (Number.isNaN(height)) continue;
    if (!(height <= high + STEP)) {
      high = height;
      top = i;
    } else if (height < high - CLIMBED || clock[top]! - clock[i]! > LEVEL_FOR) break;
  }
  if (Number.isNaN(high) || top === row) return null;
  const from = median(altitude, Math.max(0, firstAtOrAfter(clock, clock[top]! - BEFORE)), top + 1);
  if (from - altitude[row]! < LEAST) return null;
  return { start: beginning(clock, altitude, top, row, from), from };
}

/** The row where the line through the first part of the descent meets the height before it. */
function beginning(
  clock: Float64Array,
  altitude: Float64Array,
  top: number,
  row: number,
  from: FeetMsl,
): number {
  const last = from - STEP - Math.min(FIRST_PART, (from - altitude[row]!) / 2);
  let [n, st, sh, stt, sth] = [0, 0, 0, 0, 0];
  for (let i = top; i <= row && !(altitude[i]! < last); i++) {
    if (!(altitude[i]! < from - STEP / 2)) continue; // NaN too
    const t = clock[i]! - clock[top]!;
    n++;
    st += t;
    sh += altitude[i]!;
    stt += t * t;
    sth += t * altitude[i]!;
  }
  const slope = (n * sth - st * sh) / (n * stt - st * st);
  if (!(slope < 0)) return top;
  const meets = clock[top]! + (from - (sh - slope * st) / n) / slope;
  return Math.min(row, Math.max(0, firstAtOrAfter(clock, meets)));
}

function median(column: Float64Array, start: number, end: number): number {
  const sorted = column
    .slice(start, end)
    .filter((v) => !Number.isNaN(v))
    .sort();
  const n = sorted.length;
  return n % 2 ? sorted[n >> 1]! : (sorted[n / 2 - 1]! + sorted[n / 2]!) / 2;
}
