/** The turn onto a course, which may lie before what was matched. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { findJoining, type Intercept, type Joining } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { type CoursePath, measureRows } from "./path.ts";

/** The turn may lie before what was matched, by so much. Chosen: a cut and its turn take less. */
const LOOK_BACK: Seconds = 180;
/** Rolled out past the course, or parallel to it and short of it, by this much: late or early. Tuned: turns timed to 3 s end within 0.12. */
const MISTURNED: NauticalMiles = 0.15;

/** Null where there was no cut, or no turn that ended near the course. `established`: the cut that ended in being so. */
export function courseJoining(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  established: Intercept | null,
): Joining | null {
  if (!motion) return null;
  let start = span.start;
  const until = motion.time[span.start]! - LOOK_BACK * 1000;
  const flown = motion.spans.find((s) => s.start <= span.start && span.start < s.end);
  while (start > (flown?.start ?? span.start) && motion.time[start - 1]! >= until) start--;
  const rows = measureRows(exercise, path, { start, end: span.end }, motion, null);
  return findJoining(rows, established, () => MISTURNED);
}
