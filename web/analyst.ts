/** A worker that reads files and works flights out, one after the other; it stays warm between them. */
import type { OpenRequest, WorkerMessage } from "./messages.ts";

export type Progress = Extract<WorkerMessage, { kind: "reading" | "working" }>;
/** How the work on a request can end. */
export type Outcome = Exclude<WorkerMessage, Progress> | { readonly kind: "cancelled" };

export interface Analyst {
  /** One request at a time. */
  readonly run: (request: OpenRequest, heard: (progress: Progress) => void) => Promise<Outcome>;
  /** Ends at once: a run under way ends as cancelled. */
  readonly end: () => void;
}

const isProgress = (message: WorkerMessage): message is Progress =>
  message.kind === "reading" || message.kind === "working";

export function newAnalyst(): Analyst {
  let worker: Worker | null = null;
  let giveUp = () => {};
  const end = () => {
    worker?.terminate();
    worker = null;
    giveUp();
  };
  return {
    end,
    run: (request, heard) =>
      new Promise((resolve) => {
        giveUp = () => resolve({ kind: "cancelled" });
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
