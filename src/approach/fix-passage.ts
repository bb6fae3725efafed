/** Over the final fix: when, how high, and how well on the final. */
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, utcAt, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Null where it was not passed, or the log has no times. `heights`: whether the log has any. */
export function fixPassage(
  rows: ApproachRows,
  { fix, established }: Segments,
  heights: boolean,
): ApproachFacts["finalFixPassage"] {
  if (!fix || !rows.timed) return null;
  return {
    utc: utcAt(rows, fix),
    altitudeFt: finite(valueAt(rows.altitudeFt, fix)),
    altitude95Ft: heights ? Z95 * rows.heightSdFt[fix.row]! : null,
    altimeter95Ft: heights ? altimeter95(rows, fix.row) : null,
    crossTrackNm: valueAt(rows.crossTrackNm, fix),
    needle: valueAt(rows.needle, fix),
    groundSpeedKt: valueAt(rows.groundSpeedKt, fix),
    established: established !== null && established <= fix.row,
  };
}
