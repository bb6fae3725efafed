/** What the page knows: the flight on the sheet, the work under way, and what there is to say about the files. */
import { signal } from "@preact/signals";
import { issueSentence, shownName } from "../src/index.ts";
import { keep, kept } from "./kept.ts";
import type { ColumnQuestion, Debriefed, OpenRequest, WorkerMessage } from "./messages.ts";

export interface Flight extends Debriefed {
  /** Tells one sheet from the next. */
  readonly opened: number;
  /** As it was opened, to open it again with its own route as the brief. */
  readonly request: OpenRequest;
}

export type Work = { readonly words: string; readonly share: number | null };

export const flight = signal<Flight | null>(null);
export const work = signal<Work | null>(null);
/** Sentences, announced as they come. */
export const notices = signal<readonly string[]>([]);

/** Asked of the reader before files can be read. */
export const question = signal<ColumnQuestion | null>(null);

let worker: Worker | null = null;
/** What was said of the flight on the sheet, while others are read. */
let noticesBefore: readonly string[] = [];

function end(): void {
  worker?.terminate();
  worker = null;
  work.value = null;
}

/** Ends the work under way at the reader's wish; what stood on the page stays, and what was said of it. */
export function cancel(): void {
  end();
  notices.value = noticesBefore;
}

function run(request: OpenRequest, heard: (message: WorkerMessage) => void): void {
  end();
  work.value = { words: "Reading", share: null };
  worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = (event: MessageEvent<WorkerMessage>) => heard(event.data);
  worker.onerror = (event) => heard({ kind: "fault", text: event.message || "the worker did not start" });
  worker.postMessage(request);
}

const leftOutSentence = (names: readonly string[], log: string): string =>
  `Left out: ${names.map(shownName).join(", ")}. One brief makes a sheet; this one is of ${shownName(log)}.`;

/** What must not wait until the foot of the sheet: files not read, parts of the brief not usable. */
function noticesOf({ leftOut, document }: Debriefed): string[] {
  const brief = document.brief?.issues.filter((issue) => issue.severity !== "note") ?? [];
  const log = document.log.issues.filter((issue) => issue.severity === "error");
  return [
    ...(leftOut.length > 0 ? [leftOutSentence(leftOut, document.log.file)] : []),
    ...[...brief, ...log].map((issue) => issueSentence(issue)),
  ];
}

function done(debriefed: Debriefed, request: OpenRequest): void {
  end();
  flight.value = { ...debriefed, request, opened: (flight.value?.opened ?? 0) + 1 };
  notices.value = noticesOf(debriefed);
}

/** Opens files given together. `then` runs once the sheet stands. */
export function openFiles(request: OpenRequest, then: () => void): void {
  if (request.files.length === 0) return;
  if (!work.value) noticesBefore = notices.value;
  notices.value = [];
  question.value = null;
  run(request, (message) => {
    if (message.kind === "reading") {
      work.value = { words: `Reading ${shownName(message.file)}`, share: message.share };
    } else if (message.kind === "working") {
      work.value = { words: "Working out the wind and the courses", share: null };
    } else if (message.kind === "done") {
      done(message.flight, request);
      then();
      void keep(request).then((kept) => {
        if (!kept)
          notices.value = [...notices.value, "This browser keeps nothing: a reload will lose the sheet."];
      });
    } else if (message.kind === "columns") {
      end();
      question.value = { file: message.file, rows: message.rows, meanings: message.meanings, request };
      notices.value = noticesBefore;
      requestAnimationFrame(() => document.getElementById("columns-title")?.scrollIntoView());
    } else {
      end();
      notices.value =
        message.kind === "unusable"
          ? message.issues.map((issue) => issueSentence(issue))
          : [
              `Hindtrack itself failed on these files: ${message.text}. Nothing was changed; other files can be opened.`,
            ];
    }
  });
}

/** Opens again what was open before a reload; says nothing where that fails. */
export async function reopen(): Promise<void> {
  const request = await kept();
  if (!request || flight.value || worker) return;
  run(request, (message) => {
    if (message.kind === "done") done(message.flight, request);
    else if (message.kind !== "reading" && message.kind !== "working") end();
  });
}
