/** Writes a file so that it is there whole or not at all, whenever the process is ended. */
import { rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { makeFolder } from "./make-folder.ts";
import { UnusableFile } from "./output.ts";

/** The name of a file that is being written; whatever bears it may be thrown away. */
export const halfWritten = (path: string, by: string | number): string =>
  join(dirname(path), `.${basename(path)}.${by}.part`);

/** The process that was writing a file of that name; null where it is none of ours. */
export function writerOf(path: string): number | null {
  const by = /^\..+\.(\d+)(?:-\d+)?\.part$/.exec(basename(path))?.[1];
  return by === undefined ? null : Number(by);
}

/** Beside it first, then in its place: a rename within a folder is all or nothing (POSIX rename). */
export async function writeWhole(
  path: string,
  text: string,
  by: string | number = process.pid,
): Promise<void> {
  const part = halfWritten(path, by);
  try {
    await makeFolder(dirname(path));
    await writeFile(part, text);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true }).catch(() => {});
    throw new UnusableFile(path, "write", error as NodeJS.ErrnoException);
  }
}
