/** How the course was joined: the cut, where it began, and how far it went past. */
import { utcText } from "../quantity/time.ts";
import type { AngleSize, DegreesPerSecond, Seconds } from "../quantity/units.ts";
import type { CourseFacts } from "./facts.ts";
import type { Judged } from "./judged.ts";
import type { Rows } from "./path.ts";
import { median } from "./weigh.ts";

/** Less than this toward the course is no cut but keeping it. The trade's small correction is 5 degrees. */
const CUT: AngleSize = 10;
/** More than this toward the course is a turn that has still to be made. */
const CUT_MOST: AngleSize = 100;
/** Turning slower than this is straight; a cut is flown straight for so long, which a turn through it is not. Tuned. */
const STEADY: DegreesPerSecond = 1;
const STEADY_FOR: Seconds = 10;
/** Past the course for longer than this before turning back, or crossing it later than this after joining, is no overshoot of the intercept. Tuned. */
const OVERSHOOT_WITHIN: Seconds = 60;

/** The intercept before the course was joined; null where there was none, or where it cannot be told. */
export function measureIntercept(rows: Rows, judged: Judged): CourseFacts["intercept"] {
  const joined = judged.establishedAt;
  if (!rows.timed || joined === null || joined === 0) return null;
  // back from joining to the beginning of the cut: the side it came from is that of its widest row
  const converging = (i: number, side: number) => {
    const toward = -rows.trackErrorDeg[i]! * side;
    return toward >= CUT && toward <= CUT_MOST && rows.crossTrackNm[i]! * side > 0;
  };
  const beginning = (from: number, side: number) => {
    let row = from;
    while (row > 0 && !rows.gapBefore[row] && converging(row - 1, side)) row--;
    return row;
  };
  let last = joined - 1;
  while (last >= 0 && !converging(last, Math.sign(rows.crossTrackNm[last]!))) last--;
  if (last < 0) return null;
  let side = Math.sign(rows.crossTrackNm[last]!);
  let start = beginning(last, side);
  // the way back of a cut that went past the course belongs to that cut
  for (let i = start - 1; i >= 0 && !rows.gapBefore[i + 1]; i--) {
    if (rows.timeMs[start]! - rows.timeMs[i]! > OVERSHOOT_WITHIN * 1000) break;
    if (rows.crossTrackNm[i]! * side > 0) continue;
    const first = beginning(i, -side);
    if (!converging(i, -side) || !heldSteady(rows, first, i)) break;
    side = -side;
    last = i;
    start = first;
    i = start;
  }

  const errors = rows.trackErrorDeg.slice(start, last + 1);
  const steady = errors.filter((_, k) => Math.abs(rows.turnRate[start + k]!) < STEADY);
  const angle = median(steady.length > 0 ? steady : errors);
  return {
    startUtc: utcText(rows.timeMs[start]!),
    angleDeg: angle,
    startCrossTrackNm: rows.crossTrackNm[start]!,
    joinedUtc: utcText(rows.timeMs[joined]!),
    overshootNm: overshoot(rows, last, joined, side),
  };
}

/** A cut was flown, not only swept through by a turn: straight for long enough. */
function heldSteady(rows: Rows, start: number, last: number): boolean {
  let seconds = 0;
  for (let i = start + 1; i <= last; i++) {
    if (Math.abs(rows.turnRate[i]!) < STEADY) seconds += (rows.timeMs[i]! - rows.timeMs[i - 1]!) / 1000;
  }
  return seconds >= STEADY_FOR;
}

/** The farthest past the course before the track turned back to it, NM, never negative. */
function overshoot(rows: Rows, from: number, joined: number, side: number): number {
  const until = rows.timeMs[joined]! + OVERSHOOT_WITHIN * 1000;
  let past = 0;
  for (let i = from; i < rows.length; i++) {
    const beyond = -rows.crossTrackNm[i]! * side;
    if (beyond > 0) past = Math.max(past, beyond);
    const turnedBack = beyond > 0 && rows.trackErrorDeg[i]! * side >= 0;
    if (turnedBack || (beyond <= 0 && rows.timeMs[i]! > until)) break;
  }
  return past;
}
