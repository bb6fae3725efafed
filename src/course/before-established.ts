/** What was flown along a course in the time that a brief gives for it, before it was ever established: not judged, and not hidden. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Finding } from "../quantity/record.ts";
import type { Seconds, Share } from "../quantity/units.ts";
import { ESTABLISHED_TRACK } from "../track/index.ts";
import { utcAt } from "./deviation.ts";
import type { CourseFacts } from "./facts.ts";
import { evidence } from "./finding.ts";
import type { Judged } from "./judged.ts";
import { nearStation } from "./judged.ts";
import type { Rows } from "./path.ts";

/** Along the course for so long it was no intercept any more. Chosen: a cut crosses a mile at 30° in as long. */
const ALONG_FOR: Seconds = 60;
/** Less than this of the given time judged is clearly a part of it. Chosen. */
const PART: Share = 0.8;

/** Null where the brief gave no time, where nearly all of it is judged, and where what came before was the intercept. */
export function beforeEstablished(
  exercise: CourseExercise,
  rows: Rows,
  { establishedAt, span }: Judged,
): NonNullable<CourseFacts["beforeEstablished"]> | null {
  if (!exercise.between || !rows.timed || !establishedAt) return null;
  const windowS = (rows.timeMs[rows.length - 1]! - rows.timeMs[0]!) / 1000;
  const beforeS = (rows.timeMs[span.start]! - rows.timeMs[0]!) / 1000;
  if (windowS - beforeS >= PART * windowS) return null;
  let [alongS, worst] = [0, -1];
  for (let i = 1; i < establishedAt; i++) {
    if (!(Math.abs(rows.trackErrorDeg[i]!) <= ESTABLISHED_TRACK) || nearStation(exercise, rows, i)) continue;
    if (!rows.gapBefore[i]) alongS += (rows.timeMs[i]! - rows.timeMs[i - 1]!) / 1000;
    if (worst < 0 || Math.abs(rows.needle[i]!) > Math.abs(rows.needle[worst]!)) worst = i;
  }
  if (worst < 0 || alongS < ALONG_FOR) return null;
  return {
    windowS,
    judgedS: windowS - beforeS,
    alongS,
    worstNeedle: rows.needle[worst]!,
    worstNm: rows.crossTrackNm[worst]!,
    worstUtc: utcAt(rows, worst),
  };
}

export function partFindings(
  before: CourseFacts["beforeEstablished"],
  rows: Rows,
  { span }: Judged,
): Finding[] {
  if (!before) return [];
  const { windowS, judgedS, worstNeedle, worstNm } = before;
  const facts = { windowS, judgedS, worstNeedle: Math.abs(worstNeedle), worstNm };
  return [
    { code: "judged-in-part", facts, evidence: evidence(rows, { start: span.start, end: rows.length }) },
  ];
}
