/** The tray where files lie from the moment they are given until they are flights: a reload finds them there. */
import { reading, writing } from "./database.ts";
import { newId } from "./identity.ts";
import { changed } from "./news.ts";
import { type Arrival, type Choices, type KeptFile, type Labels, NO_LABELS } from "./schema.ts";

/** Keeps all the files, or none. @throws StorageTrouble */
export async function arrive(
  files: readonly KeptFile[],
  choices: Choices,
  labels: Labels = NO_LABELS,
): Promise<Arrival> {
  const arrival: Arrival = { id: newId(), at: Date.now(), files, choices, labels, tries: 0 };
  await writing(["arrivals"], (t) => t.objectStore("arrivals").put(arrival));
  changed("arrivals");
  return arrival;
}

/** What still waits, the oldest first. */
export const arrivals = (): Promise<Arrival[]> =>
  reading(async (db) => (await db.getAll("arrivals")).sort((a, b) => a.at - b.at));

/** Counts that its reading is begun, so that files which end the page each time are not tried for ever. */
export async function beginArrival(id: string): Promise<void> {
  await writing(["arrivals"], async (t) => {
    const store = t.objectStore("arrivals");
    const arrival = await store.get(id);
    if (arrival) await store.put({ ...arrival, tries: arrival.tries + 1 });
  });
}

/** Takes an arrival from the tray without making flights of it. */
export async function dismiss(id: string): Promise<void> {
  await writing(["arrivals"], (t) => t.objectStore("arrivals").delete(id));
  changed("arrivals");
}
