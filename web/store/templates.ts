/** Briefs kept by name, to fly a lesson again. */
import { reading, writing } from "./database.ts";
import { changed } from "./news.ts";
import type { Template } from "./schema.ts";
import { isStandard } from "./standards.ts";

/** By name, and the schools' standards that lie beside them. */
export const templatesAndStandards = (): Promise<Template[]> => reading((db) => db.getAll("templates"));

/** By name. */
export const templates = async (): Promise<Template[]> =>
  (await templatesAndStandards()).filter((one) => !isStandard(one));

/** Takes the place of one of the same name. @throws StorageTrouble */
export async function keepTemplate(name: string, yaml: string): Promise<void> {
  await writing(["templates"], (t) => t.objectStore("templates").put({ name, yaml, saved: Date.now() }));
  changed("templates");
}

export async function dropTemplate(name: string): Promise<void> {
  await writing(["templates"], (t) => t.objectStore("templates").delete(name));
  changed("templates");
}
