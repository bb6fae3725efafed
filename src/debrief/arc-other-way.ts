/** Whether an arc of the brief that was not found was flown the other way round, from its last radial to its first. */
import type { ArcExercise, Brief } from "../brief/brief.ts";
import { type FlownPath, type Match, matchExercises } from "../match/index.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import { shared } from "./hold-matches.ts";

const turnedRound = (arc: ArcExercise): ArcExercise => ({
  ...arc,
  fromRadial: arc.toRadial,
  toRadial: arc.fromRadial,
  fromMagnetic: arc.toMagnetic,
  toMagnetic: arc.fromMagnetic,
  turns: arc.turns === "right" ? "left" : "right",
});

/** The finding, with the times of it; null where it was not, or where that is another exercise of the brief. */
export function arcOtherWay(
  arc: ArcExercise,
  brief: Brief,
  path: FlownPath,
  matches: readonly Match[],
): Finding | null {
  const [match] = matchExercises({ ...brief, exercises: [turnedRound(arc)] }, path);
  const span = match?.span;
  if (!span || matches.some((other) => other.span && shared(span, other.span))) return null;
  const at = (row: number): string | null => {
    const time = path.time?.[row];
    return time === undefined || Number.isNaN(time) ? null : utcText(time);
  };
  return {
    code: "flown-other-way",
    facts: {},
    evidence: { fromUtc: at(span.start), toUtc: at(span.end - 1) },
  };
}
