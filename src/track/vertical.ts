/** The vertical motion: height and rate of climb, where heights were measured. */
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import { axisColumns, type FlightMeasured, longestOf, measuredIn } from "./axes.ts";
import type { MotionColumns } from "./motion.ts";
import { type AxisKind, fitNoise } from "./noise.ts";
import { smoothRun } from "./smoother.ts";

/** Vertical motion is gentler: jerk density tuned on simulated level-offs. Heights err twice as much: common practice. */
const VERTICAL: AxisKind = { axes: 1, free: 1, jerkShare: 0.1, driftShare: 4 };
/** Height is carried this far from the nearest measured one, s. */
const HEIGHT_REACH_SECONDS = 30;
const FEET_PER_MINUTE = 60 / METRES_PER_FOOT;

export function smoothVertical(
  seconds: Float64Array,
  height: Float64Array,
  spans: readonly Span[],
  motion: MotionColumns,
): void {
  motion.altitude.fill(NaN);
  motion.verticalSpeed.fill(NaN);
  const known = spans.filter((s) => height.subarray(s.start, s.end).some((h) => !Number.isNaN(h)));
  if (known.length === 0) return;
  const measured: FlightMeasured = { seconds, position: height, extra: null, velocity: null };
  const noise = fitNoise(measured, VERTICAL, known);
  const columns = axisColumns(longestOf(known), 1, 1);
  for (const span of known) {
    const { start, end } = span;
    smoothRun(columns, measuredIn(span, measured, 1), noise);
    const near = nearHeight(seconds, height, start, end);
    for (let k = start; k < end; k++) {
      if (!near[k - start]) continue;
      const s = (k - start) * 3;
      motion.altitude[k] = columns.state[s]! / METRES_PER_FOOT;
      motion.verticalSpeed[k] = columns.state[s + 1]! * FEET_PER_MINUTE;
    }
  }
}

/** Which rows have a measured height within reach. */
function nearHeight(seconds: Float64Array, height: Float64Array, start: number, end: number): Uint8Array {
  const near = new Uint8Array(end - start);
  for (const step of [1, -1]) {
    let last = NaN;
    for (let i = 0; i < end - start; i++) {
      const k = step > 0 ? start + i : end - 1 - i;
      if (!Number.isNaN(height[k]!)) last = seconds[k]!;
      if (Math.abs(seconds[k]! - last) <= HEIGHT_REACH_SECONDS) near[k - start] = 1;
    }
  }
  return near;
}
