/** How well a run fits an exercise: how much of it was flown, how near, how well aligned, and whether it reached the fix. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { Share } from "../quantity/units.ts";
import type { Against } from "./against.ts";

/** Off course by this much, a row counts half. Chosen: between full scale of a VOR at 10 NM and 2 NM off, which must still be found. */
const HALF_NM = 2;
/** A track off by this much counts half. Chosen: twice a large wind correction left out. */
const HALF_DEG = 25;
/** A course without an end is as good as whole after some of these distances. Chosen. */
const SETTLED_NM = 1.5;
/** Ending (or beginning) so far from the fix costs most of the bonus for reaching it. Chosen. */
const FIX_NM = 6;
/** Share of the score that does not depend on reaching the fix: vectors off a course are common. Chosen. */
const WITHOUT_FIX = 0.6;
/** Longest step between rows that counts as flown; the rest of a gap is not known. Chosen: 15 s at 120 kt. */
const LONGEST_STEP_NM = 0.5;

/** 1 at zero, a half `at` the value given. */
export const half = (value: number, at: number): Share => 1 / (1 + (value / at) ** 2);

export function scoreOf({ exercise, along, across, trackError, flown }: Against, run: Span): Share {
  let [sum, weights] = [0, 0];
  for (let i = run.start + 1; i < run.end; i++) {
    const weight = Math.min(LONGEST_STEP_NM, flown[i]! - flown[i - 1]!);
    sum += weight * half(across[i]!, HALF_NM) * half(trackError[i]!, HALF_DEG);
    weights += weight;
  }
  if (weights === 0) return 0;
  const made = Math.abs(along[run.end - 1]! - along[run.start]!);
  const { length } = exercise.course;
  const flownShare =
    length === null
      ? 1 - Math.exp(-made / SETTLED_NM)
      : Math.min(1, made / (length / METRES_PER_NAUTICAL_MILE));
  const fromFix = exercise.form === "to" ? along[run.end - 1]! : along[run.start]!;
  const reached =
    exercise.form === "leg" ? 1 : WITHOUT_FIX + (1 - WITHOUT_FIX) * Math.exp(-Math.abs(fromFix) / FIX_NM);
  return flownShare * reached * (sum / weights);
}
