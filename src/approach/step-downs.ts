/** Step-downs: heights not to be gone below until past a place on the final, and how low the aircraft went before it. */
import type { ApproachExercise } from "../brief/brief.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, passing, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { silenceAt, unseenBelow } from "./silence.ts";

/** Only while the final was flown: what came after the climb away or the turn away is no way to a step-down. */
export function stepDownsOf(
  { stepDowns }: ApproachExercise,
  rows: ApproachRows,
  { final, fix, missed, brokeOff }: Segments,
): ApproachFacts["stepDowns"] {
  const from = fix ? fix.row : final.start;
  const stop = missed ? missed.start.row + 1 : brokeOff ? brokeOff.row + 1 : rows.length;
  let since = Math.min(from, final.start);
  return stepDowns.map(({ name, distance, altitude }) => {
    // a step-down at or outside the fix is looked for from the beginning, and judged where it was passed
    const outside = distance >= rows.distanceNm[from]!;
    const passed = passing(rows.alongNm, -distance, "rising", outside ? 0 : since, stop);
    const end = passed ? passed.row + 1 : outside ? 0 : final.end;
    const start = outside ? Math.max(0, end - 1) : since;
    let at = -1;
    for (let i = start; i < end; i++)
      if (rows.altitudeFt[i]! < (at < 0 ? Infinity : rows.altitudeFt[at]!)) at = i;
    const silence = passed && silenceAt(rows, passed);
    const passedFt = passed && !silence ? valueAt(rows.altitudeFt, passed) : Number.NaN;
    const over = at >= 0 && passedFt < rows.altitudeFt[at]!;
    const lowest = at < 0 ? null : over ? passedFt : rows.altitudeFt[at]!;
    if (passed && !outside) since = passed.row;
    const passedUtc = passed && rows.timed ? utcAt(rows, passed) : null;
    const way = { start, end: passed ? end + 1 : end };
    const unseen = lowest === null ? null : unseenBelow(rows, way, altitude, lowest, passed);
    return {
      name,
      distanceNm: distance,
      limitFt: altitude,
      passedUtc: silence ? null : passedUtc,
      passedFt: Number.isNaN(passedFt) ? null : passedFt,
      ...(silence ? { silence } : {}),
      lowestFt: lowest,
      lowestUtc: lowest === null ? null : over ? passedUtc : utcOfRow(rows, at),
      marginFt: lowest === null ? null : lowest - altitude,
      doubt95Ft: at < 0 ? null : Z95 * rows.heightSdFt[at]!,
      altimeter95Ft: at < 0 ? null : altimeter95(rows, at),
      ...(unseen ? { unseen } : {}),
    };
  });
}
