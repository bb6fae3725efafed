/** The intercept of the final: the cut, how far it went past, and the corrections after it. One that flew through the final before what was matched is told by its first cut. */
import type { AngleSize, NauticalMiles, Seconds } from "../quantity/units.ts";
import { measureIntercept, turningPoints, withCut } from "../track/index.ts";
import { rowsWithin } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import { type ApproachRows, measureRows, type RowsFrom } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** A turn of the track back by this is a correction: the trade's small correction. */
const CORRECTION: AngleSize = 5;
const CORRECTED_WITHIN: Seconds = 120;
/** Through it, where it went past by this. As of courses: turns timed to 3 s end within 0.12. */
const THROUGH: NauticalMiles = 0.15;

/** `led`: what led onto the final. Only a cut or an arc was flown through it by mistake; a hold, a circuit or a course reversal crosses it by right. */
export function interceptOf(
  from: RowsFrom,
  rows: ApproachRows,
  { established }: Segments,
  led: ApproachFacts["joinedFrom"],
): ApproachFacts["intercept"] {
  if (established === null) return null;
  const cut = measureIntercept(rows, established);
  const through = led === "vectors" || led === "arc" ? flownThrough(from, rows, established) : null;
  const intercept = through && through.overshootNm > (cut?.overshootNm ?? 0) ? through : cut;
  if (!intercept) return null;
  const joined = rows.timeMs[established]!;
  const span = rowsWithin(rows, joined, joined + CORRECTED_WITHIN * 1000);
  return {
    ...intercept,
    joinedDistanceNm: rows.distanceNm[established]!,
    corrections: turningPoints(rows.trackErrorDeg, span, CORRECTION).length,
  };
}

function flownThrough(from: RowsFrom, rows: ApproachRows, established: number) {
  if (!from.motion) return null;
  const span = withCut(from.motion, from.span);
  if (span.start === from.span.start) return null;
  const wide = measureRows({ ...from, span });
  const intercept = measureIntercept(wide, established + rows.pathStart - wide.pathStart);
  return intercept && intercept.overshootNm >= THROUGH ? intercept : null;
}
