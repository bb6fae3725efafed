/** Which excursions are spoken of, and what is said of one: of a course, an arc or a final alike. */
import { direction } from "../quantity/angle.ts";
import { seenOf } from "../quantity/excursion-record.ts";
import { magneticCourse, type VariationUsed } from "../quantity/magnetic.ts";
import type { Finding } from "../quantity/record.ts";
import type { Seconds } from "../quantity/units.ts";
import type { ExcursionRows } from "./excursion.ts";

/** Excursions shorter than this belong to the chase that they are part of. Half of the longest chasing period. */
const CHASE_LEAD: Seconds = 35;
/** A track off for less than this was put right at once: it stays among the facts, and nothing is said of it. Tuned: a return that passes through the course takes up to 8 s to turn. */
const PROMPT: Seconds = 10;

/** Whether an excursion lasted long enough to be spoken of. */
export const isTold = ({ record }: ExcursionRows): boolean => (record.leadS ?? PROMPT) >= PROMPT;

type Times = { readonly timeMs: Float64Array };

const driftSeconds = ({ timeMs }: Times, { drifting }: ExcursionRows): Seconds =>
  (timeMs[drifting.end - 1]! - timeMs[drifting.start]!) / 1000;

/** Those that are spoken of, the farthest first; of a needle that was chased only the long ones. */
export function toldExcursions<E extends ExcursionRows>(
  rows: Times,
  excursions: readonly E[],
  chased: boolean,
): E[] {
  return excursions
    .filter(isTold)
    .filter((e) => !(chased && (e.record.leadS ?? driftSeconds(rows, e)) < CHASE_LEAD))
    .sort((a, b) => Math.abs(b.record.worstNeedle) - Math.abs(a.record.worstNeedle));
}

/** What a sentence of an excursion says. */
export function excursionFinding(
  code: string,
  rows: Times,
  e: ExcursionRows,
  variation: VariationUsed,
): Finding {
  const { record } = e;
  const course = direction(record.trackTrueDeg - record.trackErrorDeg);
  return {
    code,
    facts: {
      side: record.side,
      degrees: Math.abs(record.trackErrorDeg),
      trackTrueDeg: record.trackTrueDeg,
      trackMagneticDeg: magneticCourse(record.trackTrueDeg, variation),
      courseTrueDeg: course,
      courseMagneticDeg: magneticCourse(course, variation),
      silentS: record.silentS,
      leadS: record.leadS,
      unseenS: record.silence?.seconds ?? null,
      driftS: driftSeconds(rows, e),
      quarterReached: record.quarterUtc !== null,
      worstNeedle: Math.abs(record.worstNeedle),
      worstNm: record.worstCrossTrackNm,
    },
    evidence: seenOf(record),
  };
}
