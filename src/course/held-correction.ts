/** The wind correction that a pilot holds when nothing asks for a turn: what is believed of the wind. */
import { turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Seconds, TurnDegrees } from "../quantity/units.ts";
import { intervals, weigh } from "../quantity/weigh.ts";
import type { Rows } from "./path.ts";

/** The track leads back to the course from here: a correction, not what is held. The threshold of an excursion's track error. */
const LEADING_BACK: AngleSize = 3;
/** Shorter than this is no habit of holding. Chosen: three times the wander of a hand-flown heading. */
const LEAST: Seconds = 60;

/**
 * Mean of heading less course over the rows in which the track does not lead back to the course, right positive; null
 * where they last less than a minute or the heading is not known. Over a whole course the mean tells nothing: whoever
 * drifts off and cuts back has flown the needed correction on average.
 */
export function heldCorrection(rows: Rows, judged: Span): TurnDegrees | null {
  const lead = new Float64Array(rows.length).fill(Number.NaN);
  for (let i = judged.start; i < judged.end; i++) {
    const back = -Math.sign(rows.crossTrackNm[i]!) * rows.trackErrorDeg[i]!;
    if (back < LEADING_BACK) lead[i] = turnFrom(rows.courseAtFootDeg[i]!, rows.headingDeg[i]!);
  }
  const { mean, weight } = weigh(lead, judged, intervals(rows, judged));
  return rows.timed && weight >= LEAST ? mean : null;
}
