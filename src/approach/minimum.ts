/** The minimum: when it was reached, and how low the aircraft went before it climbed away. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import { Z95 } from "../quantity/weigh.ts";
import { altimeter95, utcAt, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { silenceAt, unseenBelow } from "./silence.ts";

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
  const unseen = known
    ? unseenBelow(rows, silentSpan(minimum.kind, rows, segments), minimum.altitude, rows.altitudeFt[lowest]!)
    : null;
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

/** At a decision altitude where the climb began, else anywhere on the final. */
function silentSpan(kind: "decision" | "descent", rows: ApproachRows, { missed, final }: Segments): Span {
  const climb = missed?.start.row ?? final.end - 2;
  const end = Math.min(rows.length, Math.max(climb, missed?.lowest ?? 0) + 2);
  return { start: kind === "decision" ? climb : final.start, end };
}
