/** The logbook as a file: saved to the disk, and taken in again. */
import { shownName } from "../src/index.ts";
import { adding } from "./adding.ts";
import { inTurn } from "./alone.ts";
import type { ArchiveMessage, ArchiveRequest } from "./archive/messages.ts";
import { archiveWords } from "./archive-words.ts";
import { alsoSay, orSay } from "./flight.ts";
import { readRows } from "./logbook.ts";
import { dismiss } from "./store/arrivals.ts";
import { changed } from "./store/news.ts";
import type { Arrival } from "./store/schema.ts";

type End = Exclude<ArchiveMessage, { kind: "flight" }> | { readonly kind: "stopped" };

/** Runs a worker of its own; null from `stop` ends it at once: what was kept until then stays. */
function run(request: ArchiveRequest, words: string): Promise<End> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL("./archive/worker.ts", import.meta.url), { type: "module" });
    const end = (message: End) => {
      worker.terminate();
      adding.value = null;
      resolve(message);
    };
    const show = (done: number, of: number) => {
      adding.value = { words, done, of, stop: () => end({ kind: "stopped" }) };
    };
    show(0, 1);
    worker.onmessage = ({ data }: MessageEvent<ArchiveMessage>) =>
      data.kind === "flight" ? show(data.done, data.of) : end(data);
    worker.onerror = (event) => end({ kind: "failed", text: event.message || "The worker did not start." });
    worker.postMessage(request);
  });
}

/** The file of the whole logbook; null where it could not be made, which is then said. */
export async function packedLogbook(): Promise<Blob | null> {
  const end = await run({ kind: "write", saved: new Date().toISOString() }, "Packing the logbook");
  if (end.kind === "failed") alsoSay(end.text);
  return end.kind === "written" ? end.archive : null;
}

/** Takes in a logbook that lies in the tray, where a reload in the middle finds it again. */
export async function takeIn(archive: Blob, name: string, arrival: Arrival | null): Promise<void> {
  const end = await inTurn("adding", () =>
    run({ kind: "read", archive, name }, `Taking in ${shownName(name)}`),
  );
  if (arrival) await orSay(dismiss(arrival.id));
  changed("flights");
  await readRows();
  if (end.kind === "read") alsoSay(...archiveWords(name, end.read));
  else if (end.kind === "failed") alsoSay(end.text);
  else if (end.kind === "stopped")
    alsoSay(`${shownName(name)}: stopped. What was in by then stays; the rest can be taken in again.`);
}
