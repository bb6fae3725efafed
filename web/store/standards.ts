/** Schools' own standards, kept among the templates as the files that were given, so that a saved logbook carries them; one may be the usual one. */
import { fileRole } from "../sorting.ts";
import { reading, writing } from "./database.ts";
import { changed } from "./news.ts";
import type { Template } from "./schema.ts";

/** A standard has an id where a brief to fly again has a name: a colon keeps the two apart. */
const nameOf = (id: string): string => `standard: ${id}`;

export const isStandard = ({ name, yaml }: Template): boolean => fileRole(name, yaml) === "standard";

export const keptStandards = async (): Promise<Template[]> =>
  (await reading((db) => db.getAll("templates"))).filter(isStandard);

/** Takes the place of one of the same id, and stays the usual one where that was. @throws StorageTrouble */
export async function keepStandard(id: string, yaml: string): Promise<void> {
  await writing(["templates"], async (t) => {
    const store = t.objectStore("templates");
    const usual = (await store.get(nameOf(id)))?.usual ?? false;
    await store.put({ name: nameOf(id), yaml, saved: Date.now(), usual });
  });
  changed("templates");
}

/** @throws StorageTrouble */
export async function dropStandard(id: string): Promise<void> {
  await writing(["templates"], (t) => t.objectStore("templates").delete(nameOf(id)));
  changed("templates");
}

/** What briefs that name no standard are held against; null for nothing. @throws StorageTrouble */
export async function makeUsual(id: string | null): Promise<void> {
  await writing(["templates"], async (t) => {
    const store = t.objectStore("templates");
    for (const one of (await store.getAll()).filter(isStandard))
      await store.put({ ...one, usual: id !== null && one.name === nameOf(id) });
  });
  changed("templates");
}
