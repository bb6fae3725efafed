/** An exercise in words, whatever its kind: the sentence over the drawing, and the notes beside it. */
import type { DocumentExercise, Finding } from "../../debrief/document.ts";
import { courseCause, courseNotes, courseSentence } from "./course.ts";
import { capital } from "./number.ts";

export interface SideNote {
  readonly lead: string;
  readonly text: string;
}

/** Why an exercise of the brief has no facts, without capital and full stop. */
export function whyNotMeasured({ kind }: DocumentExercise): string {
  if (kind === "course" || kind === "hold") return "not found on this flight";
  const article = kind === "arc" || kind === "approach" ? "an" : "a";
  return `${article} ${kind} is read and kept, but not yet compared with the flight`;
}

/** One or two plain sentences: the most telling finding, and what it came to. */
export function exerciseSentence(exercise: DocumentExercise): string {
  if (exercise.kind === "course" && exercise.facts) return courseSentence(exercise, exercise.facts);
  return `${capital(whyNotMeasured(exercise))}.`;
}

/** The notes beside the drawing, in reading order; none where there is nothing to say. */
export function sideNotes(exercise: DocumentExercise): SideNote[] {
  if (exercise.kind !== "course" || !exercise.facts) return [];
  const notes = courseNotes(exercise, exercise.facts);
  return notes.flatMap(([lead, text]) => (text === null ? [] : [{ lead, text }]));
}

/** Findings that neither the sentence nor the notes have told yet. */
export function otherFindings(exercise: DocumentExercise): Finding[] {
  const told = exercise.kind === "course" ? courseCause(exercise) : undefined;
  return exercise.findings
    .slice(1)
    .filter((finding) => finding !== told && finding.code !== "tracked-within");
}
