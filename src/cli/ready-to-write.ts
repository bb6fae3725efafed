/** Before long work: the folder for its results is there and may be written to, and what a killed run left half written is gone. */
import { access, constants, readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { KEPT } from "./folder.ts";
import { makeFolder } from "./make-folder.ts";
import { UnusableFile } from "./output.ts";
import { writerOf } from "./write-whole.ts";

/** What a run over a folder writes beside the documents. */
const RESULTS = new Set(["exercises.csv", "habits.txt", "habits.json"]);

/** Whether a process of this machine still runs: signal 0 asks without disturbing it (POSIX kill). */
function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** Removes what ended processes left half written of ours; a folder within it that cannot be read or cleared is passed over. */
async function clear(folder: string, isTop: boolean): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((error) => {
    if (isTop) throw error;
    return [];
  });
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await clear(path, false);
    const half = writerOf(entry.name);
    if (!half || runs(half.by) || !(RESULTS.has(half.name) || KEPT.test(half.name))) continue;
    await rm(path, { force: true }).catch((error) => {
      if (isTop) throw error;
    });
  }
}

/** @throws UnusableFile where nothing can be written there */
export async function readyToWrite(folder: string): Promise<void> {
  try {
    await makeFolder(folder);
    await access(folder, constants.W_OK | constants.X_OK);
    await clear(folder, true);
  } catch (error) {
    throw new UnusableFile(folder, "write", error as NodeJS.ErrnoException);
  }
}
