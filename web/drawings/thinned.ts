/** A course of a fast recorder with fewer rows, for drawing only: what a pixel cannot show is left out. */
import type { CourseSeries } from "./contract.ts";

/** Rows in a bucket keep the least and the most, so peaks stay. At the fixed scale 2 s are about a pixel. Own choice. */
const BUCKET_MS = 2000;
/** Where the log has no times: buckets in all. Twice as many as pixels in a row. Own choice. */
const UNTIMED_BUCKETS = 4000;
/** At most so many rows of a bucket are kept; smaller buckets gain nothing. */
const KEPT = 5;

/** The series itself where its rows are no closer than a few a pixel. */
export function thinned(series: CourseSeries): CourseSeries {
  const { timeMs, alongNm, needle, trackAngleErrorDeg, judged } = series;
  const length = alongNm.length;
  const spanMs = timeMs[length - 1] - timeMs[0];
  const buckets = Number.isFinite(spanMs) ? spanMs / BUCKET_MS : UNTIMED_BUCKETS;
  const size = Math.floor(length / Math.max(1, buckets));
  if (size <= KEPT) return series;
  const kept: number[] = [];
  for (let start = 0; start < length; start += size) {
    const end = Math.min(length, start + size);
    const rows = new Set([start, end === length ? end - 1 : start]);
    for (const column of [needle, trackAngleErrorDeg])
      for (const row of extremes(column, start, end)) rows.add(row);
    // The veil begins and ends at its own row.
    for (let i = Math.max(1, start); i < end; i++) if (judged[i] !== judged[i - 1]) rows.add(i - 1).add(i);
    kept.push(...[...rows].sort((a, b) => a - b));
  }
  return rowsOf(series, [...new Set(kept)]);
}

/** The rows of the least and of the most; none where no value is known. */
function extremes(column: Float64Array, start: number, end: number): number[] {
  let [least, most] = [-1, -1];
  for (let i = start; i < end; i++) {
    if (!Number.isFinite(column[i])) continue;
    if (least < 0 || column[i] < column[least]) least = i;
    if (most < 0 || column[i] > column[most]) most = i;
  }
  return least < 0 ? [] : [least, most];
}

function rowsOf(series: CourseSeries, rows: readonly number[]): CourseSeries {
  const fewer = Object.entries(series).map(([name, column]) => {
    if (column instanceof Float64Array) return [name, Float64Array.from(rows, (row) => column[row])];
    if (column instanceof Uint8Array) return [name, Uint8Array.from(rows, (row) => column[row])];
    return [name, column];
  });
  return Object.fromEntries(fewer);
}
