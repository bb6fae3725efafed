/** Before long work: the folder for its results is there and may be written to, and what a killed run left half written is gone. */
import { access, constants, readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { makeFolder } from "./make-folder.ts";
import { UnusableFile } from "./output.ts";
import { writerOf } from "./write-whole.ts";

/** Whether a process of this machine still runs: signal 0 asks without disturbing it (POSIX kill). */
function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** @throws UnusableFile where nothing can be written there */
export async function readyToWrite(folder: string): Promise<void> {
  try {
    await makeFolder(folder);
    await access(folder, constants.W_OK | constants.X_OK);
    for (const name of await readdir(folder, { recursive: true })) {
      const by = writerOf(name);
      if (by !== null && !runs(by)) await rm(join(folder, name), { force: true });
    }
  } catch (error) {
    throw new UnusableFile(folder, "write", error as NodeJS.ErrnoException);
  }
}
