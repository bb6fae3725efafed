/** A track that leads away by too little to be called off, and for so long that the needle tells of it all the same. */
import type { Span } from "../quantity/span.ts";
import type { AngleSize } from "../quantity/units.ts";
import type { AgainstCourse } from "./against-course.ts";
import { TRACK_OFF } from "./first-correction.ts";

/**
 * What a drift leads away by, more or less, sums up; what is kept with wander does not. Half of what is sought, as in
 * E. S. Page, "Continuous Inspection Schemes", Biometrika 41 (1954), from memory.
 */
const LEADS_AWAY: AngleSize = TRACK_OFF / 2;

/** From a row on [start, end): as long as the track led away by more than that in the mean since; `side`: +1 right. */
export function creepingRun(rows: AgainstCourse, from: number, until: number, side: number): Span {
  let sum = 0;
  let end = from + 1;
  for (; end < until && !rows.gapBefore[end]; end++) {
    const seconds = (rows.timeMs[end]! - rows.timeMs[end - 1]!) / 1000;
    sum += (rows.trackErrorDeg[end]! * side - LEADS_AWAY) * seconds;
    if (sum <= 0) break;
  }
  return { start: from, end };
}
