/** Lists of points kept by name, as the files that were given: a later version reads them anew. */
import { reading, writing } from "./database.ts";
import { changed } from "./news.ts";
import type { PlaceList } from "./schema.ts";

/** By name. */
export const placeLists = (): Promise<PlaceList[]> => reading((db) => db.getAll("places"));

/** Takes the place of one of the same name. @throws StorageTrouble */
export async function keepPlaces(name: string, bytes: Blob): Promise<void> {
  await writing(["places"], (t) => t.objectStore("places").put({ name, bytes, saved: Date.now() }));
  changed("places");
}

export async function dropPlaces(name: string): Promise<void> {
  await writing(["places"], (t) => t.objectStore("places").delete(name));
  changed("places");
}
