/** Where a log falls silent: nothing is smoothed across. */
import type { Span } from "../quantity/span.ts";

/** A silence longer than this, s, or than six median intervals, is a gap. */
const GAP_SECONDS = 30;
const GAP_INTERVALS = 6;
/** Where the recorder itself began a new segment, half of that is enough. */
const GAP_SHARE_AT_BREAK = 0.5;

/** Runs without a gap. */
export function splitAtGaps(seconds: Float64Array, segment: Int32Array, rows: Int32Array): Span[] {
  const steps = Float64Array.from(
    { length: seconds.length - 1 },
    (_, k) => seconds[k + 1]! - seconds[k]!,
  ).sort();
  const limit = Math.max(GAP_SECONDS, GAP_INTERVALS * steps[steps.length >> 1]!);
  const spans: Span[] = [];
  let start = 0;
  for (let k = 1; k < seconds.length; k++) {
    const silence = seconds[k]! - seconds[k - 1]!;
    const broken = segment[rows[k]!] !== segment[rows[k - 1]!];
    if (silence > (broken ? GAP_SHARE_AT_BREAK * limit : limit)) {
      spans.push({ start, end: k });
      start = k;
    }
  }
  spans.push({ start, end: seconds.length });
  return spans;
}
