/** What was flown, seen without any brief: as the sheet says, or worked out once where the sheet stands on a brief. */
import { type Signal, signal } from "@preact/signals";
import type { DocumentExercise } from "../../src/index.ts";
import { newAnalyst } from "../analyst.ts";
import type { Flight } from "../flight.ts";
import { addedTo, sortedFiles } from "../sorting.ts";

interface Found {
  readonly opened: number;
  readonly exercises: Signal<readonly DocumentExercise[]>;
}
let found: Found | null = null;

/** Empty until it is known. */
export function flownWithoutBrief(flight: Flight): Signal<readonly DocumentExercise[]> {
  if (found?.opened === flight.opened) return found.exercises;
  const exercises = signal<readonly DocumentExercise[]>([]);
  found = { opened: flight.opened, exercises };
  if (flight.document.brief === null) exercises.value = flight.document.exercises;
  else void workOut(flight, exercises);
  return exercises;
}

async function workOut({ request }: Flight, exercises: Signal<readonly DocumentExercise[]>): Promise<void> {
  const standing = await sortedFiles(request.files);
  const files = addedTo(null, { ...standing, brief: null, leftOut: [] });
  const analyst = newAnalyst();
  const outcome = await analyst.run({ ...request, files, route: null, standard: "none" }, () => {});
  analyst.end(true);
  if (outcome.kind === "done") exercises.value = outcome.flight.document.exercises;
}
