/** Makes a folder and those above it; ends with an error wherever one cannot be made. */
import { mkdir, stat } from "node:fs/promises";
import { dirname } from "node:path";

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (it) => it.isDirectory(),
    () => false,
  );

/** Node's own `recursive` never returns where a folder says that it is missing while it is there, as /proc does. */
export async function makeFolder(path: string): Promise<void> {
  if (await isFolder(path)) return;
  const above = dirname(path);
  if (above !== path) await makeFolder(above);
  try {
    await mkdir(path);
  } catch (error) {
    if (!(await isFolder(path))) throw error; // another thread may have been first
  }
}
