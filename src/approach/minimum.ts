/** The minimum: when it was reached, and how low the aircraft went before it climbed away. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet } from "../quantity/units.ts";
import { SPOKEN_FT, strayedInHeight, type UnseenRecord, unseenOf } from "../quantity/unseen.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { silenceAt } from "./silence.ts";

/** Null where the brief names none. After a landing the lowest says nothing: with the runway in sight it is gone below by right. */
export function minimumOf(
  { minimum }: ApproachExercise,
  rows: ApproachRows,
  segments: Segments,
): ApproachFacts["minimum"] {
  if (!minimum) return null;
  const { minimum: passed, missed, final, outcome } = segments;
  const judged = ["missed", "left-final", "log-ends"].includes(outcome);
  let lowest = missed ? missed.lowest : -1;
  if (!missed && judged)
    for (let i = final.start; i < final.end; i++)
      if (lowest < 0 || rows.altitudeFt[i]! < rows.altitudeFt[lowest]!) lowest = i;
  const silence = passed && silenceAt(rows, passed);
  const seen = silence ? null : passed;
  const known = judged && lowest >= 0 && !Number.isNaN(rows.altitudeFt[lowest]!);
  const unseen = known ? unseenBelow(minimum, rows, segments, rows.altitudeFt[lowest]!) : null;
  return {
    kind: minimum.kind,
    altitudeFt: minimum.altitude,
    passedUtc: seen && rows.timed ? utcAt(rows, seen) : null,
    passedNm: seen && valueAt(rows.distanceNm, seen),
    ...(silence ? { passedIn: silence } : {}),
    lowestFt: known ? rows.altitudeFt[lowest]! : null,
    lowestUtc: known ? utcOfRow(rows, lowest) : null,
    marginFt: known ? rows.altitudeFt[lowest]! - minimum.altitude : null,
    doubt95Ft: known ? Z95 * rows.heightSdFt[lowest]! : null,
    altimeter95Ft: known ? altimeter95(rows, lowest) : null,
    ...(unseen ? { unseen } : {}),
  };
}

/** How far below the minimum the aircraft may have come unseen; null where that is no lower than was seen. */
function unseenBelow(
  { kind, altitude }: NonNullable<ApproachExercise["minimum"]>,
  rows: ApproachRows,
  { missed, final }: Segments,
  seen: Feet,
): UnseenRecord | null {
  const sink = (row: number) =>
    Math.max(Math.abs(rows.verticalFpm[row - 1]!), Math.abs(rows.verticalFpm[row]!));
  const below = (span: Span) =>
    unseenOf(rows, span, rows.altitudeFt, (_, seconds, row) => strayedInHeight(seconds, sink(row)));
  const climb = missed?.start.row ?? final.end - 2;
  const start = kind === "decision" ? climb : final.start;
  const found = below({ start, end: Math.min(rows.length, Math.max(climb, missed?.lowest ?? 0) + 2) });
  return found && found.low < seen - SPOKEN_FT ? { most: altitude - found.low, seconds: found.lowS } : null;
}
