/** The chart of a course, or the plan of a hold, as rows of a table: a row each half minute, or each half mile where the log has no times. */
import type { CourseSeries } from "../src/index.ts";

const STEP_MS = 30_000;
const STEP_NM = 0.5;

/** Rows of the series to write down: the first of each step, and the last of all. */
export function sampledRows(series: Pick<CourseSeries, "timeMs" | "alongNm">): number[] {
  const { timeMs, alongNm } = series;
  const length = alongNm.length;
  const timed = Number.isFinite(timeMs[0]);
  const steps = (i: number): number =>
    timed ? (timeMs[i]! - timeMs[0]!) / STEP_MS : Math.abs(alongNm[i]! - alongNm[0]!) / STEP_NM;
  const rows: number[] = [];
  let next = 0;
  for (let i = 0; i < length; i++) {
    if (steps(i) < next) continue;
    rows.push(i);
    next = Math.floor(steps(i)) + 1;
  }
  if (length > 0 && rows.at(-1) !== length - 1) rows.push(length - 1);
  return rows;
}
