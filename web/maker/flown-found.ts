/** What was flown, seen without any brief: as the sheet says, or worked out once where the sheet stands on a brief. */
import { type Signal, signal } from "@preact/signals";
import type { DocumentExercise } from "../../src/index.ts";
import { newAnalyst } from "../analyst.ts";
import type { Flight } from "../flight.ts";
import { addedTo, sortedFiles } from "../sorting.ts";
import { lists } from "./points.ts";

interface Found {
  readonly key: string;
  readonly exercises: Signal<readonly DocumentExercise[]>;
}
let found: Found | null = null;

/** Empty until it is known. Finals are found to the runways of the lists, so these are part of the question. */
export function flownWithoutBrief(flight: Flight): Signal<readonly DocumentExercise[]> {
  const withRunways = lists.value.filter(({ runways }) => runways.length > 0).map(({ name }) => name);
  const key = [flight.opened, ...withRunways].join("\n");
  if (found?.key === key) return found.exercises;
  const exercises = signal<readonly DocumentExercise[]>([]);
  found = { key, exercises };
  if (flight.document.brief === null && withRunways.length === 0) exercises.value = flight.document.exercises;
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
