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

const countTries = (id: string, count: (before: number) => number): Promise<void> =>
  writing(["arrivals"], async (t) => {
    const store = t.objectStore("arrivals");
    const arrival = await store.get(id);
    if (arrival) await store.put({ ...arrival, tries: count(arrival.tries) });
  });

/** Counts that its reading is begun, so that files which end the page each time are not tried for ever. @throws StorageTrouble */
export const beginArrival = (id: string): Promise<void> => countTries(id, (before) => before + 1);

/** Its reading ended and the page stands, though no flight came of it yet. @throws StorageTrouble */
export const endArrivalTry = (id: string): Promise<void> => countTries(id, () => 0);

/** Takes an arrival from the tray without making flights of it. */
export async function dismiss(id: string): Promise<void> {
  await writing(["arrivals"], (t) => t.objectStore("arrivals").delete(id));
  changed("arrivals");
}
