/** A worker that reads files and works flights out, one after the other; it stays warm between them. */
import type { OpenRequest, WorkerMessage } from "./messages.ts";

export type Progress = Extract<WorkerMessage, { kind: "reading" | "working" }>;
/** How the work on a request can end. */
export type Outcome =
  | Exclude<WorkerMessage, Progress>
  /** By the reader's wish, or because other work came. */
  | { readonly kind: "cancelled"; readonly wanted: boolean };

export interface Analyst {
  /** One request at a time. */
  readonly run: (request: OpenRequest, heard: (progress: Progress) => void) => Promise<Outcome>;
  /** Ends at once: a run under way ends as cancelled. */
  readonly end: (wanted: boolean) => void;
}

const isProgress = (message: WorkerMessage): message is Progress =>
  message.kind === "reading" || message.kind === "working";

export function newAnalyst(): Analyst {
  let worker: Worker | null = null;
  let giveUp = (_wanted: boolean) => {};
  const end = (wanted: boolean) => {
    worker?.terminate();
    worker = null;
    giveUp(wanted);
  };
  return {
    end,
    run: (request, heard) =>
      new Promise((resolve) => {
        giveUp = (wanted) => resolve({ kind: "cancelled", wanted });
        worker ??= new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
        worker.onmessage = ({ data }: MessageEvent<WorkerMessage>) =>
          isProgress(data) ? heard(data) : resolve(data);
        worker.onerror = (event) => {
          // A worker that failed once is not trusted with the next flight.
          worker?.terminate();
          worker = null;
          resolve({ kind: "fault", text: event.message || "the worker did not start" });
        };
        worker.postMessage(request);
      }),
  };
}
