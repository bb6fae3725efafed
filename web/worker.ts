/** Reads the files and works the flight out, away from the page so that the page never stands still. */
import "./jitless.ts";
import {
  beginningOfTable,
  briefFromRoute,
  debriefFlight,
  type ImportedLog,
  joinLogs,
  readBrief,
  readLog,
  type TableBeginning,
  UnusableInput,
} from "../src/index.ts";
import type { OpenRequest, RouteOffer, WorkerMessage } from "./messages.ts";
import { briefsOfFlights, sortIntoFlights } from "./several.ts";
import { fileRole, sortFiles } from "./sorting.ts";
import { traceOf } from "./trace.ts";

/** Enough to see past a comment at the head of a brief. */
const BEGINNING_BYTES = 4096;

const say = (message: WorkerMessage, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });

/** The pieces of a stream, for browsers whose streams cannot be iterated. */
async function* pieces(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    yield value;
  }
}

async function sorted(files: readonly File[]) {
  const beginnings = files.map(async (file) => ({
    file,
    role: fileRole(file.name, await file.slice(0, BEGINNING_BYTES).text()),
  }));
  return sortFiles(await Promise.all(beginnings));
}

/** Reads one file; `from` and `part` say where its progress lies within the whole. */
function readOne(file: File, columns: OpenRequest["columns"], from = 0, part = 1): Promise<ImportedLog> {
  say({ kind: "reading", file: file.name, share: from });
  let said = 0;
  return readLog(pieces(file.stream()), file.name, {
    ...(columns ? { csvColumns: columns } : {}),
    onProgress: (bytes) => {
      if (performance.now() - said < 50) return;
      said = performance.now();
      say({ kind: "reading", file: file.name, share: from + (part * bytes) / file.size });
    },
  });
}

/** The first rows of a table that could be read if its columns were known. */
async function tableOf(file: File, { issues }: UnusableInput): Promise<TableBeginning | null> {
  if (!issues.some(({ code }) => code === "no-headings")) return null;
  return beginningOfTable(new Uint8Array(await file.slice(0, BEGINNING_BYTES).arrayBuffer()));
}

const offer = (log: ImportedLog): RouteOffer[] =>
  log.routes.map((route) => ({ name: route.name, idents: route.points.map((p) => p.ident) }));

interface UnreadFile {
  readonly file: File;
  readonly error: UnusableInput;
}

/** A table whose columns the reader must tell. */
interface Question extends TableBeginning {
  readonly file: string;
}

/** Each log in turn: what `keep` makes of it stays in memory, the log does not. A question ends the reading. */
async function readEach<T>(
  logs: readonly File[],
  columns: OpenRequest["columns"],
  keep: (log: ImportedLog, file: File) => T,
): Promise<{ read: T[]; unread: UnreadFile[] } | Question> {
  const read: T[] = [];
  const unread: UnreadFile[] = [];
  for (const [i, file] of logs.entries()) {
    try {
      read.push(keep(await readOne(file, columns, i / logs.length, 1 / logs.length), file));
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      const table = await tableOf(file, error);
      if (table) return { file: file.name, ...table };
      unread.push({ file, error });
    }
  }
  return { read, unread };
}

/** Says how the files part into flights, where they are of more than one. */
async function saySeveral(
  { files, columns }: OpenRequest,
  logs: readonly File[],
  briefs: readonly File[],
): Promise<boolean> {
  const traced = await readEach(logs, columns, (log, file) => ({ file, trace: traceOf(log) }));
  if (!("read" in traced)) return false;
  const { read, unread } = traced;
  const flights = sortIntoFlights(read.map(({ trace }) => trace)).map((of) => of.map((i) => read[i]!.file));
  if (flights.length < 2) return false;
  const names = (list: readonly File[]) => list.map(({ name }) => name);
  const { briefs: taken, unused } = briefsOfFlights(flights.map(names), names(briefs));
  say({
    kind: "several",
    flights: flights.map((of, i) => {
      const brief = taken[i] === null ? [] : [briefs[taken[i]!]!];
      return { files: [...of, ...brief].map((file) => files.indexOf(file)) };
    }),
    unread: unread.map(({ file, error }) => ({ file: file.name, issues: error.issues })),
    leftOut: unused.map((i) => briefs[i]!.name),
  });
  return true;
}

async function open(request: OpenRequest): Promise<void> {
  const { files, route, flight, columns } = request;
  const { logs, brief: briefFile, leftOut } = await sorted(files);
  if (logs.length === 0) {
    const file = briefFile?.name ?? "";
    throw new UnusableInput([{ code: "no-log-given", severity: "error", where: { file }, facts: {} }]);
  }
  // The brief first: it is short, and a mistake in it is said at once.
  const briefDraft = briefFile ? readBrief(await briefFile.text(), briefFile.name) : null;
  const briefs = briefFile ? [briefFile, ...leftOut] : leftOut;
  if (logs.length > 1 && (await saySeveral(request, logs, briefs))) return;
  const each = await readEach(logs, columns, (log) => log);
  if (!("read" in each)) return say({ kind: "columns", ...each });
  const { read, unread } = each;
  if (read.length === 0) throw new UnusableInput(unread.flatMap(({ error }) => error.issues));
  const log = joinLogs(read);
  say({ kind: "working" });
  const draft = route === null ? briefDraft : briefFromRoute(log.routes[route]!, log.file);
  const { document, series } = debriefFlight({ log, brief: draft, flight });
  const routes = draft ? [] : offer(log);
  const drawn = [series.path, ...series.exercises].flatMap((c) => (c ? Object.values(c) : []));
  const buffers = new Set(drawn.flatMap((c) => (ArrayBuffer.isView(c) ? [c.buffer as ArrayBuffer] : [])));
  say(
    {
      kind: "done",
      flight: {
        document,
        series,
        routes,
        leftOut: [...unread.map(({ file }) => file), ...leftOut].map((f) => f.name),
      },
    },
    [...buffers],
  );
}

self.onmessage = async (event: MessageEvent<OpenRequest>) => {
  try {
    await open(event.data);
  } catch (error) {
    if (error instanceof UnusableInput) say({ kind: "unusable", issues: error.issues });
    else say({ kind: "fault", text: error instanceof Error ? error.message : String(error) });
  }
};
