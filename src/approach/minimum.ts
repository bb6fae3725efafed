/** The minimum: when it was reached, and how low the aircraft went before it climbed away. */
import type { ApproachExercise } from "../brief/brief.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** Null where the brief names none. After a landing the lowest says nothing: with the runway in sight it is gone below by right. */
export function minimumOf(
  { minimum }: ApproachExercise,
  rows: ApproachRows,
  { minimum: passed, missed, final, outcome }: Segments,
): ApproachFacts["minimum"] {
  if (!minimum) return null;
  const judged = outcome === "missed" || outcome === "log-ends";
  let lowest = missed ? missed.lowest : -1;
  if (!missed && judged)
    for (let i = final.start; i < final.end; i++)
      if (lowest < 0 || rows.altitudeFt[i]! < rows.altitudeFt[lowest]!) lowest = i;
  const known = judged && lowest >= 0 && !Number.isNaN(rows.altitudeFt[lowest]!);
  return {
    kind: minimum.kind,
    altitudeFt: minimum.altitude,
    passedUtc: passed && rows.timed ? utcAt(rows, passed) : null,
    passedNm: passed && valueAt(rows.distanceNm, passed),
    lowestFt: known ? rows.altitudeFt[lowest]! : null,
    lowestUtc: known ? utcOfRow(rows, lowest) : null,
    marginFt: known ? rows.altitudeFt[lowest]! - minimum.altitude : null,
    doubt95Ft: known ? Z95 * rows.heightSdFt[lowest]! : null,
    altimeter95Ft: known ? altimeter95(rows, lowest) : null,
  };
}
