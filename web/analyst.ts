/** A worker that reads files and works flights out, one after the other; it stays warm between them. */
import type { ListRequest, OpenRequest, WorkerMessage } from "./messages.ts";

export type Progress = Extract<WorkerMessage, { kind: "reading" | "working" }>;
type End =
  | Exclude<WorkerMessage, Progress>
  /** By the reader's wish, or because other work came. */
  | { readonly kind: "cancelled"; readonly wanted: boolean };
/** How the work on a flight can end. */
export type Outcome = Exclude<End, { kind: "list" }>;
/** How the reading of a list of points can end. */
export type ListOutcome = Extract<End, { kind: "list" | "unusable" | "fault" | "cancelled" }>;

export interface Analyst {
  /** One request at a time. */
  readonly run: (request: OpenRequest, heard: (progress: Progress) => void) => Promise<Outcome>;
  /** A list of points, in place of a flight. */
  readonly readList: (request: ListRequest) => Promise<ListOutcome>;
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
  /** The worker answers what it was asked: a flight for a flight, a list for a list. */
  const ask = <E extends End>(
    request: OpenRequest | ListRequest,
    heard: (progress: Progress) => void,
  ): Promise<E> =>
    new Promise<End>((resolve) => {
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
    }) as Promise<E>;
  return { end, run: ask<Outcome>, readList: (request) => ask<ListOutcome>(request, () => {}) };
}
