/** What went wrong on a course: how it was joined, whether the needle was chased, and each excursion with its causes. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Span } from "../quantity/span.ts";
import {
  arrivedRow,
  type CausedExcursion,
  type Correction,
  causesOf,
  countReversals,
  findExcursions,
  type Joining,
  ofOneWind,
  type Reversals,
  weaveOf,
} from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { wasChased } from "./finding.ts";
import { isFitted } from "./fit.ts";
import { type CourseCut, courseJoining } from "./joining.ts";
import type { Judged } from "./judged.ts";
import type { CoursePath, Rows } from "./path.ts";

export interface Departures {
  readonly joining: Joining | null;
  /** The reversals where they are called chasing, by the turns of the track or by its excursions to both sides. */
  readonly chased: Reversals | null;
  /** They are those of the excursions: nothing more is said of each. */
  readonly weave: boolean;
  readonly excursions: readonly CausedExcursion[];
}

export function findDepartures(given: {
  readonly exercise: CourseExercise;
  readonly path: CoursePath;
  readonly span: Span;
  readonly motion: Motion | null;
  readonly rows: Rows;
  readonly judged: Judged;
  readonly intercept: CourseCut | null;
  readonly correctionOver: (span: Span) => Correction | null;
}): Departures {
  const { exercise, path, span, motion, rows, judged, intercept, correctionOver } = given;
  if (isFitted(exercise)) return { joining: null, chased: null, weave: false, excursions: [] };
  const { start, end } = judged.span;
  const joining = courseJoining(exercise, path, span, motion, intercept);
  // who swings too much to be established is seen to swing
  const near = Math.min(start, (rows.timed ? arrivedRow(rows) : null) ?? start);
  const swings = countReversals(rows, { start: near, end });
  const quick = swings && wasChased(rows, swings) ? swings : null;
  // a track that stood off from the roll-out on is told from there
  let from = start;
  while (joining && from > 0 && rows.timeMs[from - 1]! >= joining.time) from--;
  const found = findExcursions(rows, { start: from, end }, { fromStation: judged.begins === "near-station" });
  const minutes = (rows.timeMs[end - 1]! - rows.timeMs[near]!) / 60_000;
  const weave = quick ? null : weaveOf(rows, found, minutes);
  const chased = quick ?? weave;
  const caused = found.map((e) => {
    const correction = correctionOver(e.drifting);
    return { ...e, record: { ...e.record, causes: causesOf(e, { rows, joining, chased, correction }) } };
  });
  return { joining, chased, weave: weave !== null, excursions: ofOneWind(caused) };
}
