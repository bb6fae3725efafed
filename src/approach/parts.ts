/** The approach as parts in flown order: each with its kind and its rows. */
import type { Span } from "../quantity/span.ts";
import { ceilRow, utcOfRow } from "./column.ts";
import { type ApproachFacts, onWheels } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

type Segment = ApproachFacts["segments"][number];

export interface Part extends Span {
  readonly kind: Segment["kind"];
}

/** Whole and without overlap: every row of the approach belongs to one part, and no part is empty. */
export function partsOf({ length }: ApproachRows, segments: Segments): Part[] {
  const { established, final, threshold, missed, climbOut, brokeOff, outcome } = segments;
  const wheels = onWheels(outcome);
  const onFinal = Math.min(established ?? final.start, final.start);
  const marks: [Part["kind"], number][] = [
    ["joining", 0],
    ["inbound", onFinal],
    ["final", final.start],
  ];
  if (threshold) marks.push([wheels ? "landing" : "past-threshold", ceilRow(threshold)]);
  if (climbOut) marks.push(["climb-out", ceilRow(climbOut.start)]);
  if (brokeOff) marks.push(["left-final", brokeOff.row + 1]);
  // one who climbs away before the threshold passes it in the climb
  if (missed) {
    const start = ceilRow(missed.start);
    if (start <= (marks[3]?.[1] ?? length)) marks.splice(3);
    marks.push(["missed-approach", start]);
  }
  return marks
    .map(([kind, start], i) => ({ kind, start, end: marks[i + 1]?.[1] ?? length }))
    .filter(({ start, end }) => end > start);
}

export const segmentFacts = (rows: ApproachRows, parts: readonly Part[]): Segment[] =>
  parts.map(({ kind, start, end }) => ({
    kind,
    startUtc: utcOfRow(rows, start),
    endUtc: utcOfRow(rows, end - 1),
    fromNm: rows.distanceNm[start]!,
    toNm: rows.distanceNm[end - 1]!,
  }));

/** By row: which part it belongs to, from 0. */
export function partOfRow(parts: readonly Part[], length: number): Uint8Array {
  const column = new Uint8Array(length);
  parts.forEach(({ start, end }, k) => {
    column.fill(k, start, end);
  });
  return column;
}
