/** Chasing the needle: swings of the track from side to side, beyond what noise and a hand-flown heading make. */
import type { ReversalsRecord } from "../quantity/excursion-record.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, Seconds, UtcMillis } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { AgainstCourse } from "./against-course.ts";

/** A swing of the track counts from this size, end to end. Tuned: four times a hand-flown wander of 2 degrees. */
const SWING: AngleSize = 8;
/** Within this of its farthest the track has not turned back yet. Chosen: a quarter of a swing, about a hand-flown wander. */
const AT_ITS_FARTHEST: AngleSize = 2;
/** A swing belongs to chasing when it lasts so long, half a period: periods of 10 to 60 s. */
const HALF_PERIOD: readonly [Seconds, Seconds] = [5, 30];
/** Swings that shrink by at least this share each time are bracketing that converges. Tuned. */
const CONVERGING = 0.75;
/** ... and bracketing is done after so many swings. Common practice, no source. */
const BRACKETING_SWINGS = 4;

export interface Reversals extends Readonly<ReversalsRecord> {
  /** The rows from the first to the last of them. */
  readonly from: number;
  readonly to: number;
}

interface Swing {
  readonly from: number;
  readonly to: number;
  readonly size: AngleSize;
  readonly seconds: Seconds;
}

/** Turning points of a column, reached and left by at least the size of a swing: where it sets out is none. */
export function turningPoints(column: Float64Array, span: Span, swing: AngleSize = SWING): number[] {
  const points: number[] = [];
  let high = span.start;
  let low = span.start;
  let rising = 0;
  for (let i = span.start; i < span.end; i++) {
    const value = column[i]!;
    if (value > column[high]!) high = i;
    if (value < column[low]!) low = i;
    if (rising >= 0 && column[high]! - value >= swing) {
      if (rising > 0) points.push(high);
      rising = -1;
      low = i;
    } else if (rising <= 0 && value - column[low]! >= swing) {
      if (rising < 0) points.push(low);
      rising = 1;
      high = i;
    }
  }
  return points;
}

function converges(swings: readonly Swing[]): boolean {
  return (
    swings.length <= BRACKETING_SWINGS &&
    swings.every((s, k) => k === 0 || s.size <= CONVERGING * swings[k - 1]!.size)
  );
}

/** The middle of the time in which a turning point is held: the farthest of a track held there may be any of its rows. */
function turningTime(
  { trackErrorDeg, timeMs }: AgainstCourse,
  point: number,
  { start, end }: Span,
): UtcMillis {
  const held = (i: number) => Math.abs(trackErrorDeg[i]! - trackErrorDeg[point]!) <= AT_ITS_FARTHEST;
  let [first, last] = [point, point];
  for (let i = point; i >= start; i--) if (held(i)) first = i;
  for (let i = point; i < end; i++) if (held(i)) last = i;
  return (timeMs[first]! + timeMs[last]!) / 2;
}

/** Runs of neighbouring swings that are each quick enough. */
function runs(rows: AgainstCourse, span: Span): Swing[][] {
  const points = turningPoints(rows.trackErrorDeg, span);
  const all: Swing[][] = [[]];
  const times = points.map((point, k) => {
    const [before, after] = [points[k - 1] ?? span.start, points[k + 1] ?? span.end];
    return turningTime(rows, point, { start: before, end: after });
  });
  for (let k = 1; k < points.length; k++) {
    const [from, to] = [points[k - 1]!, points[k]!];
    const seconds = (times[k]! - times[k - 1]!) / 1000;
    const size = Math.abs(rows.trackErrorDeg[to]! - rows.trackErrorDeg[from]!);
    if (seconds >= HALF_PERIOD[0] && seconds <= HALF_PERIOD[1]) all.at(-1)!.push({ from, to, size, seconds });
    else all.push([]);
  }
  return all;
}

/**
 * Reversals of the ground track within a judged span; null where the log has no times. Each swing from one
 * side to the other is counted, from turning point to turning point; two quick ones and more that do not converge make
 * chasing. The track swings
 * as the heading does, because wind changes slowly against 60 s.
 */
export function countReversals(rows: AgainstCourse, judged: Span): Reversals | null {
  if (!rows.timed) return null;
  const swings: Swing[] = [];
  let count = 0;
  let silent = 0;
  let start = judged.start;
  for (let i = judged.start + 1; i <= judged.end; i++) {
    if (i < judged.end && !rows.gapBefore[i]) continue;
    for (const run of runs(rows, { start, end: i })) {
      if (run.length < 2 || converges(run)) continue;
      swings.push(...run);
      count += run.length;
    }
    if (i < judged.end) silent += rows.timeMs[i]! - rows.timeMs[i - 1]!;
    start = i;
  }
  const minutes = (rows.timeMs[judged.end - 1]! - rows.timeMs[judged.start]! - silent) / 60_000;
  const of = (pick: (s: Swing) => number) => median(Float64Array.from(swings, pick));
  return {
    count,
    perMinute: minutes > 0 ? count / minutes : 0,
    medianAmplitudeDeg: count > 0 ? of((s) => s.size / 2) : null,
    medianPeriodS: count > 0 ? of((s) => 2 * s.seconds) : null,
    from: swings[0]?.from ?? judged.start,
    to: swings.at(-1)?.to ?? judged.end - 1,
  };
}

export const reversalsRecord = ({ from: _, to: __, ...record }: Reversals): ReversalsRecord => record;

/** That the needle was chased, over the rows of the reversals. */
export function chasedFinding(
  code: string,
  { timeMs }: Pick<AgainstCourse, "timeMs">,
  r: Reversals,
): Finding {
  return {
    code,
    facts: {
      reversals: r.count,
      perMinute: r.perMinute,
      amplitudeDeg: r.medianAmplitudeDeg,
      periodS: r.medianPeriodS,
    },
    evidence: { fromUtc: utcText(timeMs[r.from]!), toUtc: utcText(timeMs[r.to]!) },
  };
}
