/** How noisy a log is, read from the log itself: the noise under which the filter is least surprised by it. */
import type { Span } from "../quantity/span.ts";
import { type AxisNoise, AxisSmoother } from "./kalman.ts";

/** Measurement variances tried, m2: from a good receiver to a resampled or jittery log. */
const MEASUREMENT = [0.4, 1, 2.5, 6.3, 16, 40, 100];
/** Jerk densities tried, m2/s5: from a light aircraft flown gently to steep turns of a jet. */
const JERK = [0.06, 0.19, 0.6];
/** Rows looked at, spread over the log in pieces; more do not change the choice. */
const PIECES = 5;
const PIECE_ROWS = 240;

/**
 * The noise of the horizontal positions of a log, from its innovations by likelihood (Student's t of 4 degrees, so
 * that single wild points do not decide). Measurement variance 0.4 to 100 m2, jerk 0.06 to 0.6 m2/s5; the lower
 * ends, tuned on simulated 1 s logs, are never undercut.
 */
export function fitNoise(
  seconds: Float64Array,
  measured: Float64Array,
  axes: number,
  spans: readonly Span[],
  scale = 1,
): AxisNoise {
  const pieces = choosePieces(spans);
  const rows = pieces.reduce((most, p) => Math.max(most, p.end - p.start), 0);
  const smoother = new AxisSmoother(rows, axes);
  const surprise = (noise: AxisNoise): number => {
    let sum = 0;
    for (const { start, end } of pieces) {
      sum +=
        (end - start) *
        smoother.filter(
          seconds.subarray(start, end),
          measured.subarray(start * axes, end * axes),
          end - start,
          noise,
        );
    }
    return sum;
  };
  let best: AxisNoise = { measurement: MEASUREMENT[0]!, jerk: JERK[0]! * scale };
  let least = Infinity;
  for (const jerk of JERK) {
    let before = Infinity;
    for (const measurement of MEASUREMENT) {
      const noise = { measurement, jerk: jerk * scale };
      const cost = surprise(noise);
      if (cost < least) {
        least = cost;
        best = noise;
      }
      if (cost > before) break; // the cost has one valley
      before = cost;
    }
  }
  return best;
}

/** Pieces of the longest spans, evenly spread. */
function choosePieces(spans: readonly Span[]): Span[] {
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
