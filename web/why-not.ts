/** Why an exercise of the brief has no figures. */
import type { DocumentExercise } from "../src/index.ts";

export function whyNot(exercise: DocumentExercise): string {
  if (exercise.kind !== "course")
    return `a${exercise.kind === "arc" || exercise.kind === "approach" ? "n" : ""} ${exercise.kind} is read and kept, but not yet compared with the flight`;
  if (!exercise.match) return "not found on this flight";
  return "found, but too little of it was flown to compare";
}
