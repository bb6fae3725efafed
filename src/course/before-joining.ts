/** The time before a course was joined, which is not judged: how long, and how far off it was flown along it meanwhile. */
import type { CourseExercise } from "../brief/brief.ts";
import type { AngleSize, Seconds, Share } from "../quantity/units.ts";
import { isCut } from "../track/index.ts";
import type { CourseFacts } from "./facts.ts";
import { type Judged, nearStation } from "./judged.ts";
import type { Rows } from "./path.ts";

/** More than this left out is said. Chosen: the length of a usual cut. */
const LONG: Seconds = 60;
/** ... and less, where the needle was farther off than the published limits allow (FAA-S-ACS-8C: three quarters). */
const FAR: Share = 0.75;
/** Farther off its direction it was not flown along it. Chosen: half-way to square. */
const ALONG: AngleSize = 45;

/** Null where little was left out, where it was judged from its beginning, and without times. */
export function beforeJoining(
  exercise: CourseExercise,
  rows: Rows,
  { establishedAt }: Judged,
): NonNullable<CourseFacts["beforeJoining"]> | null {
  if (!establishedAt || !rows.timed) return null;
  const seconds = (rows.timeMs[establishedAt]! - rows.timeMs[0]!) / 1000;
  let worst = -1;
  for (let i = 0; i < establishedAt; i++) {
    const error = rows.trackErrorDeg[i]!;
    if (isCut(error, rows.crossTrackNm[i]!) || !(Math.abs(error) <= ALONG) || nearStation(exercise, rows, i))
      continue;
    if (worst < 0 || Math.abs(rows.needle[i]!) > Math.abs(rows.needle[worst]!)) worst = i;
  }
  const strayed = worst >= 0 && Math.abs(rows.needle[worst]!) > FAR;
  if (seconds <= LONG && !strayed) return null;
  return {
    seconds,
    strayed: strayed ? { needle: rows.needle[worst]!, crossTrackNm: rows.crossTrackNm[worst]! } : null,
  };
}
