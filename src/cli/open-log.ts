/** Opens a log on disk and reads it, with progress where somebody watches and an end where Ctrl-C asks for it. */
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { Cancelled, type ImportedLog, type ReadOptions, readLog } from "../index.ts";
import { complain, UnusableFile } from "./output.ts";
import { readingProgress } from "./progress.ts";

export async function openLog(path: string, csvColumns?: ReadOptions["csvColumns"]): Promise<ImportedLog> {
  const bytes = createReadStream(path);
  try {
    await new Promise<void>((resolve, reject) => {
      bytes.once("open", () => resolve());
      bytes.once("error", reject);
    });
  } catch (error) {
    throw new UnusableFile(path, "read", error as NodeJS.ErrnoException);
  }
  const progress = readingProgress(path, (await stat(path)).size);
  // Nothing is half written while a log is read, so the process may end where it stands, by the signal itself: a script
  // around it then stops too, and a shell shows 130. The analysis gives no turn to a listener; the signal ends it alone.
  const cancel = () => {
    progress.end();
    complain(new Cancelled(path));
    process.kill(process.pid, "SIGINT");
  };
  process.once("SIGINT", cancel);
  try {
    return await readLog(bytes, path, {
      onProgress: progress.say,
      ...(csvColumns ? { csvColumns } : {}),
    });
  } catch (error) {
    const { syscall } = error as NodeJS.ErrnoException;
    throw syscall ? new UnusableFile(path, "read", error as NodeJS.ErrnoException) : error;
  } finally {
    process.off("SIGINT", cancel);
    progress.end();
  }
}
