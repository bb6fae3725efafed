/** Writes a file so that it is there whole or not at all, whenever the process is ended. */
import { rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { makeFolder } from "./make-folder.ts";
import { UnusableFile } from "./output.ts";

/** The name of a file that is being written; whatever bears it may be thrown away. */
export const halfWritten = (path: string, by: string | number): string =>
  join(dirname(path), `.${basename(path)}.${by}.part`);

/** The process that was writing a file of that name, and the name that it was to have; null where nothing was half written so. */
export function writerOf(path: string): { readonly by: number; readonly name: string } | null {
  const [, name, by] = /^\.(.+)\.(\d+)(?:-\d+)?\.part$/.exec(basename(path)) ?? [];
  return name === undefined ? null : { by: Number(by), name };
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
