/** Which times the track left its line for good: of a course, an arc or a final alike. */
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Seconds } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { creepingRun } from "./creep.ts";
import { type AlongLine, type ExcursionRows, excursionFrom, onCourse, QUARTER } from "./excursion.ts";
import { TRACK_OFF } from "./first-correction.ts";

/** What differs from line to line. */
export interface ExcursionsOf {
  /** The judged rows begin beside a station, where the needle was not judged but the track tells. */
  readonly fromStation?: boolean;
  /** Carried away by this at least where the needle told of it; see `TOLD_LEAST`. */
  readonly toldLeast?: NauticalMiles;
}

/** Shorter lulls do not end a run of track error. Tuned on wander of 2 degrees over 20 s. */
const LULL: Seconds = 15;
/** ... nor longer ones in which the track still led away by this, while its mean from A on stays off. Tuned likewise. */
const STILL_AWAY: AngleSize = 1;
/** Carried away: outward by this, or to a quarter scale. Tuned: five times what wander makes on a course well kept. */
const CARRIED_AWAY: NauticalMiles = 0.1;
/** ... where the needle told of it, by this at least: beside a station a quarter scale is less than wander makes. Tuned likewise. */
const TOLD_LEAST: NauticalMiles = 0.06;

/** Diverging by more than the threshold (and than its doubt): +1 to the right, -1 to the left, else 0. */
function diverging(rows: AlongLine, i: number): number {
  const error = rows.trackErrorDeg[i]!;
  if (!(Math.abs(error) >= Math.max(TRACK_OFF, Z95 * rows.trackSdDeg[i]!)) || Math.abs(error) > 90) return 0;
  const side = Math.sign(error);
  return rows.crossTrackNm[i]! * side >= -onCourse(rows, i) ? side : 0;
}

/** A run of divergence [start, end): its rows are off to one side, but for lulls. */
function divergingRun(rows: AlongLine, from: number, end: number, side: number): Span {
  let start = from;
  let last = from;
  let sum = rows.trackErrorDeg[from]! * side;
  let lull = 0;
  for (let i = from + 1; i < end; i++) {
    if (rows.gapBefore[i]) break;
    const error = rows.trackErrorDeg[i]! * side;
    sum += error;
    const forGood = sum >= TRACK_OFF * (i - start + 1);
    if (diverging(rows, i) === side) {
      // wander that fell back before the track really left is no beginning
      if (i > last + 1 && !forGood) {
        start = i;
        sum = error;
      }
      last = i;
      lull = 0;
      continue;
    }
    lull += error;
    const stillAway = forGood && lull >= STILL_AWAY * (i - last);
    if (error < -TRACK_OFF) break;
    if (!stillAway && rows.timeMs[i]! - rows.timeMs[last]! > LULL * 1000) break;
  }
  return { start, end: last + 1 };
}

/** Off already where the judged rows begin: the track tells from before, beside a station too, where a needle does not. */
function begunBefore(rows: AlongLine, from: number, side: number): number {
  let start = from;
  for (let i = from - 1; i >= 0 && !rows.gapBefore[i + 1]; i--) {
    const error = rows.trackErrorDeg[i]! * side;
    if (error < -TRACK_OFF || error > 90 || rows.timeMs[start]! - rows.timeMs[i]! > LULL * 1000) break;
    if (error >= TRACK_OFF) start = i;
  }
  return start;
}

/** The row of a run that is farthest out, and how far the run carried the aircraft. */
function carried(
  rows: AlongLine,
  run: Span,
  side: number,
): { far: number; moved: NauticalMiles; told: boolean } {
  const out = (k: number) => rows.crossTrackNm[k]! * side;
  let far = run.start;
  for (let k = run.start; k < run.end; k++) if (out(k) > out(far)) far = k;
  const told = rows.needle[far]! * side >= QUARTER && rows.needle[run.start]! * side < QUARTER;
  return { far, moved: out(far) - Math.max(0, out(run.start)), told };
}

/** An excursion, and the row in which it was back on course. */
interface Found {
  readonly rows: ExcursionRows;
  readonly back: number;
}

/** All excursions of some rows, in flown order. Empty where the log has no times. */
export function findExcursions(
  rows: AlongLine,
  judged: Span,
  { fromStation = false, toldLeast = TOLD_LEAST }: ExcursionsOf = {},
): ExcursionRows[] {
  if (!rows.timed) return [];
  const found: Found[] = [];
  for (let i = judged.start; i < judged.end; ) {
    const side = diverging(rows, i);
    if (side === 0) {
      i++;
      continue;
    }
    const begun = fromStation && i === judged.start ? begunBefore(rows, i, side) : i;
    const run = divergingRun(rows, begun, judged.end, side);
    const { far, moved, told } = carried(rows, run, side);
    i = Math.max(i + 1, run.end);
    if (moved < CARRIED_AWAY && !(told && moved >= toldLeast)) continue;
    const excursion = excursionFrom(rows, judged, run.start, far, side);
    found.push(excursion);
    i = Math.max(i, excursion.back);
  }
  return [...found, ...findCreeps(rows, judged, found)]
    .map((e) => e.rows)
    .sort((a, b) => a.drifting.start - b.drifting.start);
}

/** Those that crept away between others: as far as a drift at the least, and the needle told of it. */
function findCreeps(rows: AlongLine, judged: Span, others: readonly Found[]): Found[] {
  const found: Found[] = [];
  for (let i = judged.start; i < judged.end; ) {
    const other = others.find((e) => i >= e.rows.drifting.start && i < e.back);
    const side = diverging(rows, i);
    if (other || side === 0) {
      i = other ? other.back : i + 1;
      continue;
    }
    const run = creepingRun(rows, i, judged.end, side);
    const { far, moved, told } = carried(rows, run, side);
    i = run.end;
    if (moved < CARRIED_AWAY || !told) continue;
    const excursion = excursionFrom(rows, judged, run.start, far, side);
    const apart = others.every(
      (e) => e.back <= run.start || e.rows.drifting.start >= Math.max(run.end, excursion.back),
    );
    if (!apart) continue;
    found.push(excursion);
    i = Math.max(i, excursion.back);
  }
  return found;
}
