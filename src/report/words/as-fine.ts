/** An exercise told no finer than its log: measured durations in whole steps of the time between two points. */
import type { DebriefDocument, DocumentExercise, Finding } from "../../debrief/document.ts";

/** Facts that were measured on the log, s. Not those that were asked for, or solved from the wind. */
const MEASURED = new Set([
  ...["leadS", "silentS", "periodS", "shortestS", "longestS", "outboundS", "lateS", "driftS", "seconds"],
]);
/** Of these the stamps of two points tell the length exactly. */
const EXACT = new Set(["gap-in-exercise", "gap-beside-exercise"]);
/** Points closer than this tell every second that words name, s. */
const FINE_S = 1.5;

type Log = Pick<DebriefDocument["log"], "medianIntervalS">;
type Whole = <T extends number | null>(seconds: T) => T | number;

/** Rounds to whole steps; what lasted less than one is told as one, for nothing shorter is seen. */
const wholeSteps =
  (step: number): Whole =>
  (seconds) =>
    seconds === null
      ? seconds
      : Math.sign(seconds) * Math.max(1, Math.round(Math.abs(seconds) / step)) * step;

function finding(told: Finding, whole: Whole): Finding {
  if (EXACT.has(told.code)) return told;
  const facts = Object.entries(told.facts).map(([name, fact]) => [
    name,
    MEASURED.has(name) && typeof fact === "number" ? whole(fact) : fact,
  ]);
  return { ...told, facts: Object.fromEntries(facts) };
}

const timed = <T extends { readonly seconds: number | null }>(part: T, whole: Whole): T => ({
  ...part,
  seconds: whole(part.seconds),
});

/**
 * The exercise as words may tell it. Of a log with a point a second it is the same; of a sparse one the durations are
 * whole multiples of the median time between its points, at least one. What was asked for stays as it is.
 */
export function asFineAs({ medianIntervalS }: Log, exercise: DocumentExercise): DocumentExercise {
  if (medianIntervalS === null || medianIntervalS < FINE_S) return exercise;
  const whole = wholeSteps(Math.round(medianIntervalS));
  const findings = exercise.findings.map((f) => finding(f, whole));
  if (exercise.kind === "course" && exercise.facts?.beforeJoining) {
    const { beforeJoining } = exercise.facts;
    return {
      ...exercise,
      findings,
      facts: { ...exercise.facts, beforeJoining: timed(beforeJoining, whole) },
    };
  }
  if (exercise.kind === "hold" && exercise.facts) {
    const { laps, entry } = exercise.facts;
    const facts = {
      ...exercise.facts,
      laps: laps.map((lap) => ({
        ...lap,
        outbound: timed(lap.outbound, whole),
        inbound: lap.inbound && timed(lap.inbound, whole),
      })),
      entry: entry && { ...entry, outbound: entry.outbound && timed(entry.outbound, whole) },
    };
    return { ...exercise, findings, facts };
  }
  if (exercise.kind === "approach" && exercise.facts) {
    const { descent, procedureTurn: turn } = exercise.facts;
    const slower = descent && { ...descent, levels: descent.levels.map((level) => timed(level, whole)) };
    const procedureTurn = turn && { ...turn, outboundS: whole(turn.outboundS), awayS: whole(turn.awayS) };
    return { ...exercise, findings, facts: { ...exercise.facts, descent: slower, procedureTurn } };
  }
  return { ...exercise, findings };
}
