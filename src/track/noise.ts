/** How noisy a log is, read from the log itself: the noise under which the filter is least surprised by it. */
import type { Span } from "../quantity/span.ts";
import {
  type AxisColumns,
  type AxisNoise,
  axisColumns,
  type FlightMeasured,
  type Measured,
  measuredIn,
} from "./axes.ts";
import { filterForward, type Surprise } from "./forward.ts";

/**
 * Measurement variances tried, m2: from a good receiver (0.4 m, and 0.3 m of rounding to 1e-5 degrees) to a resampled
 * or jittery log. Jerk densities tried, m2/s5: from a light aircraft flown gently to steep turns of a jet. The least of
 * both are never undercut: long intervals hardly tell them, and a doubt too small is worse. Tuned on simulation seeds
 * 1 to 6.
 */
const MEASUREMENT = [0.25, 0.6, 1.5, 4, 10, 25, 60, 150];
const JERK = [0.06, 0.12, 0.25, 0.5, 1];
/**
 * Slow errors of a receiver, 2.5 m that change over 180 s, gain a variance of 2 sd2 / time, m2/s. Sizes: common
 * practice, no source. A log cannot tell them from motion, so this is not fitted.
 */
const DRIFT = 0.07;
/** Rows looked at, spread over the log in pieces; more do not change the choice. */
const PIECES = 5;
const PIECE_ROWS = 240;

/** How an axis differs from a horizontal one. */
export interface AxisKind {
  readonly axes: number;
  /** Axes along which it can move. */
  readonly free: number;
  readonly jerkShare: number;
  readonly driftShare: number;
}

/**
 * The noise of the positions of a log, from its innovations by likelihood (Student's t of 4 degrees, so that single
 * wild points do not decide); velocities are not looked at.
 */
export function fitNoise(all: FlightMeasured, kind: AxisKind, spans: readonly Span[]): AxisNoise {
  const pieces = choosePieces(spans).map((span) => measuredIn(span, { ...all, velocity: null }, kind.axes));
  const columns = axisColumns(Math.max(0, ...pieces.map((p) => p.count)), kind.axes, kind.free);
  const at = (m: number, j: number): AxisNoise => ({
    measurement: MEASUREMENT[m]!,
    jerk: JERK[j]! * kind.jerkShare,
    drift: DRIFT * kind.driftShare,
    velocity: Number.POSITIVE_INFINITY,
  });
  const known = new Map<number, number>();
  const cost = (m: number, j: number): number => {
    if (m < 0 || m >= MEASUREMENT.length || j < 0 || j >= JERK.length) return Number.POSITIVE_INFINITY;
    const key = m * JERK.length + j;
    const found = known.get(key) ?? surprise(columns, pieces, at(m, j)).position;
    known.set(key, found);
    return found;
  };
  // downhill over the table, one row or column at a time: the cost has one valley
  let m = 0;
  let j = 0;
  for (;;) {
    const steps = [
      [m - 1, j],
      [m + 1, j],
      [m, j - 1],
      [m, j + 1],
    ] as const;
    const [bestM, bestJ] = steps.reduce((a, b) => (cost(b[0], b[1]) < cost(a[0], a[1]) ? b : a));
    if (!(cost(bestM, bestJ) < cost(m, j))) return at(m, j);
    [m, j] = [bestM, bestJ];
  }
}

/** Mean surprise over some runs. */
export function surprise(columns: AxisColumns, runs: readonly Measured[], noise: AxisNoise): Surprise {
  let [position, velocity, rows] = [0, 0, 0];
  for (const run of runs) {
    const own = filterForward(columns, run, noise);
    position += run.count * own.position;
    velocity += run.count * own.velocity;
    rows += run.count;
  }
  return rows > 0 ? { position: position / rows, velocity: velocity / rows } : { position: 0, velocity: 0 };
}

/** Pieces of the longest spans, evenly spread. */
export function choosePieces(spans: readonly Span[]): Span[] {
  const total = spans.reduce((sum, s) => sum + s.end - s.start, 0);
  if (total <= PIECES * PIECE_ROWS) return spans.filter((s) => s.end - s.start > 4);
  const pieces: Span[] = [];
  for (const { start, end } of spans) {
    const share = Math.round((PIECES * (end - start)) / total);
    for (let i = 0; i < share; i++) {
      const from = start + Math.floor(((end - start) * (i + 0.5)) / share - PIECE_ROWS / 2);
      const first = Math.max(start, from);
      pieces.push({ start: first, end: Math.min(end, first + PIECE_ROWS) });
    }
  }
  return pieces.length > 0 ? pieces : spans.slice(0, 1);
}
