/** How an approach ended that was not left: over the threshold to a landing, or where the log ends. */
import { Z95 } from "../quantity/weigh.ts";
import { type Moment, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import { hiddenFeet, silenceAt } from "./silence.ts";

/** Where the log ends in flight. */
export function logEndOf(rows: ApproachRows): ApproachFacts["logEnd"] {
  const row = rows.length - 1;
  const altitude = rows.altitudeFt[row]!;
  return {
    utc: utcOfRow(rows, row)!,
    distanceNm: rows.distanceNm[row]!,
    altitudeFt: Number.isNaN(altitude) ? null : altitude,
  };
}

/** Over the threshold to a landing; in a silence with what that may hide. */
export function landingOf(rows: ApproachRows, threshold: Moment): ApproachFacts["landing"] {
  const height = valueAt(rows.heightFt, threshold);
  const thresholdFt = Number.isFinite(height) ? height : null;
  const silence = silenceAt(rows, threshold);
  const at = { thresholdUtc: utcAt(rows, threshold), thresholdFt };
  if (!silence) return { ...at, groundSpeedKt: valueAt(rows.groundSpeedKt, threshold) };
  const doubt = Z95 * rows.heightSdFt[threshold.row]! + hiddenFeet(rows, threshold);
  return { ...at, groundSpeedKt: null, ...(thresholdFt === null ? {} : { threshold95Ft: doubt }), silence };
}
