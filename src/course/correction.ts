/** The first turn back toward the course: when the pilot corrected. */
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, Seconds } from "../quantity/units.ts";
import type { Rows } from "./path.ts";

/** A correction turns the track back by this, mean before against mean after. Tuned: under the trade's small correction of 5 degrees, over hand-flown wander. */
const TURNED_BACK: AngleSize = 4;
/** ... at this rate at its quickest. Tuned: a 5 degree correction peaks near 0.6, wander of 2 degrees over 20 s near 0.4. */
const QUICKEST: DegreesPerSecond = 0.5;
/** The means are over this long, the turn itself left out. */
const BEFORE: Seconds = 12;
const AFTER: Seconds = 12;
const TURN: Seconds = 6;
/** The turn begins where its rate has come to this share of the quickest. Tuned against scripted turns with a roll lag of 2.5 s. */
const ONSET = 0.3;

function meanError(rows: Rows, from: number, to: number, span: Span): number {
  let sum = 0;
  let n = 0;
  for (let i = span.start; i < span.end; i++) {
    const t = rows.timeMs[i]!;
    if (t > to) break;
    if (t < from) continue;
    sum += rows.trackErrorDeg[i]!;
    n++;
  }
  return n > 0 ? sum / n : Number.NaN;
}

/**
 * The row where the first correction begins in a span that starts with the track off to a side (+1 right), or null.
 * A correction is a turn toward the course, quicker and larger than wander; the run of divergence ends at
 * `runStop`, where a turn that ended it is looked for at the latest.
 */
export function correctionRow(rows: Rows, span: Span, side: number, runStop: number): number | null {
  const lastMs = rows.timeMs[Math.min(runStop, span.end - 1)]! + (TURN + AFTER) * 1000;
  const rate = (i: number) => -side * rows.turnRate[i]!;
  const startMs = rows.timeMs[span.start]!;
  for (let i = span.start + 1; i < span.end && rows.timeMs[i]! <= lastMs; i++) {
    if (rows.gapBefore[i]) return null;
    const isPeak =
      rate(i) >= QUICKEST && rate(i) >= rate(i - 1) && !(i + 1 < span.end && rate(i + 1) > rate(i));
    if (!isPeak) continue;
    const t = rows.timeMs[i]!;
    const before = meanError(
      rows,
      Math.max(startMs, t - (TURN / 2 + BEFORE) * 1000),
      Math.max(startMs, t - (TURN / 2) * 1000),
      span,
    );
    const after = meanError(rows, t + (TURN / 2) * 1000, t + (TURN / 2 + AFTER) * 1000, span);
    if (!(side * (before - after) >= TURNED_BACK)) continue;
    let onset = i;
    while (onset > span.start + 1 && rate(onset - 1) > ONSET * rate(i)) onset--;
    return onset;
  }
  return null;
}
