/** Packs the logbook into a file and unpacks it, away from the page. */
import "../jitless.ts";
import { StorageTrouble } from "../store/trouble.ts";
import type { ArchiveMessage, ArchiveRequest } from "./messages.ts";
import { readArchive } from "./read.ts";
import { UnusableArchive } from "./unusable.ts";
import { writeArchive } from "./write.ts";

const say = (message: ArchiveMessage): void => self.postMessage(message);
const sayFlight = (done: number, of: number): void => say({ kind: "flight", done, of });

async function work(request: ArchiveRequest): Promise<void> {
  if (request.kind === "write") {
    return say({ kind: "written", archive: await writeArchive(request.saved, sayFlight) });
  }
  const bytes = new Uint8Array(await request.archive.arrayBuffer());
  say({ kind: "read", read: await readArchive(bytes, request.name, sayFlight) });
}

self.onmessage = async (event: MessageEvent<ArchiveRequest>) => {
  try {
    await work(event.data);
  } catch (error) {
    const known = error instanceof UnusableArchive || error instanceof StorageTrouble;
    const text = error instanceof Error ? error.message : String(error);
    say({ kind: "failed", text: known ? text : `Hindtrack itself failed on the logbook: ${text}.` });
  }
};
