/** Over the final fix: when, how high, and how well on the final. */
import { SPOKEN_FT, strayedInHeight } from "../quantity/unseen.ts";
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
  const seconds = fix.share > 0 ? (rows.timeMs[fix.row + 1]! - rows.timeMs[fix.row]!) / 1000 : 0;
  const strayed = strayedInHeight(seconds);
  // between two points far apart the height is straight between them only by guess
  const hidden = strayed >= SPOKEN_FT ? strayed : 0;
  const altimeter = altimeter95(rows, fix.row);
  return {
    utc: utcAt(rows, fix),
    altitudeFt: finite(valueAt(rows.altitudeFt, fix)),
    altitude95Ft: heights ? Z95 * rows.heightSdFt[fix.row]! + hidden : null,
    altimeter95Ft: heights && altimeter !== null ? altimeter + hidden : null,
    crossTrackNm: valueAt(rows.crossTrackNm, fix),
    needle: valueAt(rows.needle, fix),
    groundSpeedKt: valueAt(rows.groundSpeedKt, fix),
    established: established !== null && established <= fix.row,
  };
}
