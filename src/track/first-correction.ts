/** The first turn back toward the course: when the pilot corrected. */
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, Seconds, UtcMillis } from "../quantity/units.ts";
import type { AgainstCourse } from "./against-course.ts";

/** The track is off from here. Under the 5 degrees that the trade calls a small correction. Tuned on hand-flown wander of 2 degrees. */
export const TRACK_OFF: AngleSize = 3;
/** A correction turns the track back by this, mean before against mean after. Tuned: under the trade's small correction of 5 degrees, over hand-flown wander. */
const TURNED_BACK: AngleSize = 4;
/** ... at this rate at its quickest. Tuned: a 5 degree correction peaks near 0.6, wander of 2 degrees over 20 s near 0.4. */
const QUICKEST: DegreesPerSecond = 0.5;
/** The means are over this long, the turn itself left out. */
const BEFORE: Seconds = 12;
const AFTER: Seconds = 12;
const TURN: Seconds = 6;
/** A turn back by this is a correction, whatever follows; a smaller one has to last so long. Tuned: five times the wander. */
const PLAIN: AngleSize = 10;
const LASTING: readonly Seconds[] = [20, 30, 45];
/** ... and to stop the drift, or to be turned at a rate that wander never has. Tuned: three times the quickest wander. */
const DELIBERATE: DegreesPerSecond = 1.2;
/** The turn begins where its rate has come to this share of the quickest. Tuned against scripted turns with a roll lag of 2.5 s. */
const ONSET = 0.3;

function meanError(rows: AgainstCourse, from: number, to: number, span: Span): number {
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
 * A correction is a turn toward the course, quicker and larger than wander, from the row `left` on where the
 * aircraft has left the course. A small one counts when it lasts: wander of that size soon swings back.
 */
export function correctionRow(rows: AgainstCourse, span: Span, side: number, left: number): number | null {
  const rate = (i: number) => -side * rows.turnRate[i]!;
  const startMs = rows.timeMs[span.start]!;
  const whole = { start: span.start, end: rows.length };
  for (let i = Math.max(left, span.start + 1); i < span.end; i++) {
    const isPeak =
      rate(i) >= QUICKEST && rate(i) >= rate(i - 1) && !(i + 1 < rows.length && rate(i + 1) > rate(i));
    if (!isPeak) continue;
    const t = rows.timeMs[i]!;
    const turnStart = t - (TURN / 2) * 1000;
    const turnEnd = t + (TURN / 2) * 1000;
    const before = meanError(rows, Math.max(startMs, turnStart - BEFORE * 1000), turnStart, whole);
    const quick = rate(i) >= DELIBERATE ? Number.POSITIVE_INFINITY : nextDeliberate(rows, i, side);
    const after = (seconds: Seconds) =>
      meanError(rows, turnEnd, Math.min(turnEnd + seconds * 1000, quick), whole);
    const back = side * (before - after(AFTER));
    if (!(back >= TURNED_BACK)) continue;
    const lasts = LASTING.every((s) => side * (before - after(s)) >= TURNED_BACK);
    const stops = side * after(LASTING.at(-1)!) < TRACK_OFF || rate(i) >= DELIBERATE;
    if (back < PLAIN && !(lasts && stops)) continue;
    return onsetOf(rows, i, side, span.start + 1);
  }
  return null;
}

/** Where the turn back that is quickest at a row began. */
function onsetOf(rows: AgainstCourse, peak: number, side: number, least: number): number {
  const rate = (i: number) => -side * rows.turnRate[i]!;
  let onset = peak;
  while (onset > least && rate(onset - 1) > ONSET * rate(peak)) onset--;
  return onset;
}

/** When the next deliberate turn back after a row began: what that turned is not a gentle one's before it. */
function nextDeliberate(rows: AgainstCourse, row: number, side: number): UtcMillis {
  const rate = (i: number) => -side * rows.turnRate[i]!;
  for (let i = row + 1; i < rows.length; i++) {
    if (!(rate(i) >= DELIBERATE)) continue;
    while (i + 1 < rows.length && rate(i + 1) > rate(i)) i++;
    return rows.timeMs[onsetOf(rows, i, side, row + 1)]!;
  }
  return Number.POSITIVE_INFINITY;
}
