/** An exercise in words, whatever its kind: the sentence over the drawing, and the notes beside it. */
import type { DocumentExercise, Finding } from "../../debrief/document.ts";
import { courseCause, courseNotes, courseSentence } from "./course.ts";
import { holdNotes, holdSentence, lapSentence } from "./hold.ts";
import { capital } from "./number.ts";

export interface SideNote {
  readonly lead: string;
  readonly text: string;
}

/** Why an exercise of the brief has no facts, without capital and full stop. */
export function whyNotMeasured({ kind, match }: DocumentExercise): string {
  if (kind === "hold" && match) return "no lap of it was flown in the time that the brief gives";
  if (kind === "course" || kind === "hold") return "not found on this flight";
  const article = kind === "arc" || kind === "approach" ? "an" : "a";
  return `${article} ${kind} is read and kept, but not yet compared with the flight`;
}

/** One or two plain sentences: the most telling finding, and what it came to. */
export function exerciseSentence(exercise: DocumentExercise): string {
  if (exercise.kind === "course" && exercise.facts) return courseSentence(exercise, exercise.facts);
  if (exercise.kind === "hold" && exercise.facts) return holdSentence(exercise, exercise.facts);
  return `${capital(whyNotMeasured(exercise))}.`;
}

function notesOf(exercise: DocumentExercise): [string, string | null][] {
  if (exercise.kind === "course" && exercise.facts) return courseNotes(exercise, exercise.facts);
  if (exercise.kind === "hold" && exercise.facts) return holdNotes(exercise, exercise.facts);
  return [];
}

/** The notes beside the drawing, in reading order; none where there is nothing to say. */
export function sideNotes(exercise: DocumentExercise): SideNote[] {
  const notes = notesOf(exercise);
  return notes.flatMap(([lead, text]) => (text === null ? [] : [{ lead, text }]));
}

/** Findings that neither the sentence nor the notes have told yet. */
export function otherFindings(exercise: DocumentExercise): Finding[] {
  const told = exercise.kind === "course" ? courseCause(exercise) : undefined;
  return exercise.findings
    .slice(1)
    .filter((finding) => finding !== told && finding.code !== "tracked-within");
}

/** A line a lap, of a hold that was flown; none else. */
export function lapSentences(exercise: DocumentExercise): string[] {
  if (exercise.kind !== "hold" || !exercise.facts) return [];
  const { facts } = exercise;
  return facts.laps.map((lap, i) => lapSentence(lap, i, facts));
}
