/** An exercise in words, whatever its kind: the sentence over the drawing, and the notes beside it. */
import type { DocumentExercise, Finding } from "../../debrief/document.ts";
import { APPROACH_TOLD, approachCause, approachNotes, approachSentence } from "./approach.ts";
import { arcCause, arcNotes, arcSentence } from "./arc.ts";
import { courseCause, courseNotes, courseSentence } from "./course.ts";
import { descentCause, descentNotes, descentSentence } from "./descent.ts";
import { directionFact } from "./fact.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { holdNotes, holdSentence, lapSentence } from "./hold.ts";
import { capital, clock, count, degreesDoubt, degreesToSide } from "./number.ts";

export interface SideNote {
  readonly lead: string;
  readonly text: string;
}

/** As in "…; at its fix a hold was flown, 09:04 to 09:17 UTC, on 337°M (± 2°), 90° right of its inbound course". */
function heldOtherwise({ facts, evidence: { fromUtc, toUtc } }: Finding): string {
  const held = facts.laps === 1 ? "a lap was flown" : "a hold was flown";
  const when = fromUtc && toUtc ? `, ${clock(fromUtc)} to ${clock(toUtc)} UTC,` : "";
  const course = `${directionFact(facts, "course")} ${degreesDoubt(Number(facts.doubt95Deg))}`;
  const off = degreesToSide(Number(facts.offDeg));
  const from = off === "0°" ? "" : `${off} of `;
  const side = facts.otherSide ? `, ${from === "" ? "but" : "and"} with turns to the ${facts.turns}` : "";
  return `not found as the brief gives it; at its fix ${held}${when} on ${course}, ${from}its inbound course${side}`;
}

/** Why an exercise of the brief has no facts, without capital and full stop. */
export function whyNotMeasured({ kind, match, findings: [why] }: DocumentExercise): string {
  const at = why?.evidence.fromUtc ? ` at ${clock(why.evidence.fromUtc)} UTC` : "";
  if (why?.code === "log-ends") return `whether it was flown cannot be told: the log ends${at}, in flight`;
  if (why?.code === "log-begins")
    return `whether it was flown cannot be told: the log begins${at}, in flight`;
  if (why?.code === "log-ends-at-fix")
    return `whether it was flown cannot be told: the log ends${at}, in flight, ${Math.round(Number(why.facts.seconds))} seconds after its fix was passed`;
  if (why?.code === "log-begins-at-fix")
    return `whether it was flown cannot be told: the log begins${at}, in flight, ${Math.round(Number(why.facts.seconds))} seconds before its fix was passed`;
  if (why?.code === "log-silent-there" && Number(why.facts.times) > 1)
    return `whether it was flown cannot be told: the log is silent ${count(Number(why.facts.times))} times about its fix, the longest for ${Math.round(Number(why.facts.seconds))} seconds${at}, where parts of it may have been flown`;
  if (why?.code === "log-silent-there")
    return `whether it was flown cannot be told: the log is silent for ${Math.round(Number(why.facts.seconds))} seconds${at}, where it may have been flown`;
  if (why?.code === "turned-at-fix")
    return `no lap of it was made out; its fix was passed${at} and again at ${clock(why.evidence.toUtc!)} UTC with turns between, so that an entry may have been flown, or a lap that is not to be told as one`;
  if (why?.code === "flown-other-way")
    return `it was flown the other way round${at && why.evidence.toUtc ? `, ${clock(why.evidence.fromUtc!)} to ${clock(why.evidence.toUtc)} UTC` : ""}, ${why.facts.to ? `from ${why.facts.from} to ${why.facts.to}` : "from the last radial of the brief to the first"}; as the brief gives it, it was not flown`;
  if (why?.code === "held-otherwise") return heldOtherwise(why);
  if (why?.code === "height-unit") return `nothing can be told of it: ${HEIGHT_UNIT}`;
  if (why?.code === "points-left-out") {
    const { leftOut, points } = why.facts;
    return `whether it was flown cannot be told: ${count(Number(leftOut))} of the ${count(Number(points))} points of the log could not be used`;
  }
  if (kind === "hold" && match) return "no lap of it was flown in the time that the brief gives";
  return "not found on this flight";
}

/** One or two plain sentences: the most telling finding, and what it came to. */
export function exerciseSentence(exercise: DocumentExercise): string {
  if (exercise.kind === "course" && exercise.facts) return courseSentence(exercise, exercise.facts);
  if (exercise.kind === "hold" && exercise.facts) return holdSentence(exercise, exercise.facts);
  if (exercise.kind === "arc" && exercise.facts) return arcSentence(exercise, exercise.facts);
  if (exercise.kind === "descent" && exercise.facts) return descentSentence(exercise, exercise.facts);
  if (exercise.kind === "approach" && exercise.facts) return approachSentence(exercise);
  return `${capital(whyNotMeasured(exercise))}.`;
}

function notesOf(exercise: DocumentExercise): [string, string | null][] {
  if (exercise.kind === "course" && exercise.facts) return courseNotes(exercise, exercise.facts);
  if (exercise.kind === "hold" && exercise.facts) return holdNotes(exercise, exercise.facts);
  if (exercise.kind === "arc" && exercise.facts) return arcNotes(exercise, exercise.facts);
  if (exercise.kind === "descent" && exercise.facts) return descentNotes(exercise, exercise.facts);
  if (exercise.kind === "approach" && exercise.facts) return approachNotes(exercise, exercise.facts);
  return [];
}

/** The finding that the notes tell as the cause. */
function causeOf(exercise: DocumentExercise): Finding | undefined {
  if (exercise.kind === "course") return courseCause(exercise);
  if (exercise.kind === "arc") return arcCause(exercise);
  if (exercise.kind === "approach") return approachCause(exercise);
  return exercise.kind === "descent" ? descentCause(exercise) : undefined;
}

/** The notes beside the drawing, in reading order; none where there is nothing to say. */
export function sideNotes(exercise: DocumentExercise): SideNote[] {
  const notes = notesOf(exercise);
  return notes.flatMap(([lead, text]) => (text === null ? [] : [{ lead, text }]));
}

/** What the notes say in figures already. */
const WITHIN = new Set(["tracked-within", "arc-within", ...APPROACH_TOLD]);

/** Findings that neither the sentence nor the notes have told yet. */
export function otherFindings(exercise: DocumentExercise): Finding[] {
  const told = causeOf(exercise);
  return exercise.findings.slice(1).filter((finding) => finding !== told && !WITHIN.has(finding.code));
}

/** A line a lap, of a hold that was flown; none else. */
export function lapSentences(exercise: DocumentExercise): string[] {
  if (exercise.kind !== "hold" || !exercise.facts) return [];
  const { facts } = exercise;
  return facts.laps.map((lap, i) => lapSentence(lap, i, facts));
}
