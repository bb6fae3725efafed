/** Over the final fix: when, how high, and how well on the final. */
import type { Share } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, utcAt, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { hiddenFeet, hiddenNeedle, silenceAt } from "./silence.ts";

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const needle95At = (rows: ApproachRows, row: number): Share =>
  (Z95 * rows.positionSdNm[row]!) / rows.fullScaleNm[row]! + hiddenNeedle(rows, row);

/** Null where it was not passed, or the log has no times. `heights`: whether the log has any. */
export function fixPassage(
  rows: ApproachRows,
  { fix, established }: Segments,
  heights: boolean,
): ApproachFacts["finalFixPassage"] {
  if (!fix || !rows.timed) return null;
  // between two points far apart all is straight between them only by guess
  const hidden = hiddenFeet(rows, fix);
  const silence = silenceAt(rows, fix);
  const shown = finite(valueAt(rows.judgedNeedle, fix));
  const altimeter = altimeter95(rows, fix.row);
  return {
    utc: utcAt(rows, fix),
    altitudeFt: finite(valueAt(rows.altitudeFt, fix)),
    altitude95Ft: heights ? Z95 * rows.heightSdFt[fix.row]! + hidden : null,
    altimeter95Ft: heights && altimeter !== null ? altimeter + hidden : null,
    crossTrackNm: valueAt(rows.crossTrackNm, fix),
    needle: shown,
    ...(silence ? { ...(shown === null ? {} : { needle95: needle95At(rows, fix.row) }), silence } : {}),
    groundSpeedKt: silence ? null : valueAt(rows.groundSpeedKt, fix),
    established: established !== null && established <= fix.row,
  };
}
