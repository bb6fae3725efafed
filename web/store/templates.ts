/** Briefs kept by name, to fly a lesson again. */
import { reading, writing } from "./database.ts";
import { changed } from "./news.ts";
import type { Template } from "./schema.ts";
import { isStandard } from "./standards.ts";

/** By name; standards, which lie beside them, are none. */
export const templates = async (): Promise<Template[]> =>
  (await reading((db) => db.getAll("templates"))).filter((one) => !isStandard(one));

/** Takes the place of one of the same name. @throws StorageTrouble */
export async function keepTemplate(name: string, yaml: string): Promise<void> {
  await writing(["templates"], (t) => t.objectStore("templates").put({ name, yaml, saved: Date.now() }));
  changed("templates");
}

export async function dropTemplate(name: string): Promise<void> {
  await writing(["templates"], (t) => t.objectStore("templates").delete(name));
  changed("templates");
}
