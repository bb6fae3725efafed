/** The time before a course was joined, which is not judged: how long, and how far off it was flown along it meanwhile. */
import type { CourseExercise } from "../brief/brief.ts";
import type { AngleSize, Seconds, Share } from "../quantity/units.ts";
import { ESTABLISHED_NEEDLE, isCut } from "../track/index.ts";
import { utcAt } from "./deviation.ts";
import type { CourseFacts } from "./facts.ts";
import { type Judged, nearStation } from "./judged.ts";
import type { Rows } from "./path.ts";

/** More than this left out is said. Chosen: the length of a usual cut. */
const LONG: Seconds = 60;
/** ... and less, where the needle was farther off than the published limits allow (FAA-S-ACS-8C: three quarters). */
const FAR: Share = 0.75;
/** Farther off its direction it was not flown along it. Chosen: half-way to square. */
const ALONG: AngleSize = 45;

/** On the course before: within half scale, and nearly along it. Chosen: a heading on the course drifts by less in 35 kt across at 100 kt, and no cut is smaller in common practice. */
const ON_COURSE: AngleSize = 20;

/** Null where little was left out, where it was judged from its beginning, and without times. */
export function beforeJoining(
  exercise: CourseExercise,
  rows: Rows,
  { establishedAt }: Judged,
): NonNullable<CourseFacts["beforeJoining"]> | null {
  if (!establishedAt || !rows.timed) return null;
  const seconds = (rows.timeMs[establishedAt]! - rows.timeMs[0]!) / 1000;
  let [worst, onCourse, drift] = [-1, false, -1];
  const farther = (i: number, than: number) =>
    than < 0 || Math.abs(rows.needle[i]!) > Math.abs(rows.needle[than]!);
  for (let i = 0; i < establishedAt; i++) {
    const error = rows.trackErrorDeg[i]!;
    if (rows.gapBefore[i]) onCourse = false;
    if (isCut(error, rows.crossTrackNm[i]!) || !(Math.abs(error) <= ALONG) || nearStation(exercise, rows, i))
      continue;
    if (farther(i, worst)) worst = i;
    if (Math.abs(error) <= ON_COURSE && Math.abs(rows.needle[i]!) <= ESTABLISHED_NEEDLE) onCourse = true;
    if (onCourse && farther(i, drift)) drift = i;
  }
  const past = (row: number, share: Share) => row >= 0 && Math.abs(rows.needle[row]!) > share;
  const at = (row: number) => ({ needle: rows.needle[row]!, crossTrackNm: rows.crossTrackNm[row]! });
  const strayed = past(worst, FAR) ? at(worst) : null;
  const drifted = past(drift, ESTABLISHED_NEEDLE) ? { ...at(drift), utc: utcAt(rows, drift) } : null;
  return seconds > LONG || strayed || drifted ? { seconds, strayed, drifted } : null;
}
