/** What counts as 1: the limit that an exercise was held against, else one home's default. */
import type { DocumentExercise } from "../debrief/document.ts";
import type { Limit } from "../standard/test-standard.ts";
import { TEST_STANDARDS } from "../standard/tolerance.ts";

/** Where a document names no standard, or its standard sets no such limit. */
const US = TEST_STANDARDS.find(({ id }) => id === "instrument-rating-us")!;

/** By the criterion that judges it. */
const DEFAULTS = {
  "course-needle": US.course.needle,
  "approach-needle": US.approach.needle,
  "approach-glide-path": US.approach.glidePath,
  "arc-distance": US.arc.distance,
  "hold-leg-time": US.hold.legTime,
} satisfies Readonly<Record<string, Limit<number> | null>>;

/** Always above 0. */
export function limitOf(criterion: keyof typeof DEFAULTS): (exercise: DocumentExercise) => number {
  const otherwise = DEFAULTS[criterion]!.limit;
  return ({ verdicts }) => {
    const limit = verdicts.find((v) => v.criterion === criterion)?.limit ?? otherwise;
    return limit > 0 ? limit : otherwise;
  };
}
