/** Reads the files and works the flight out, away from the page so that the page never stands still. */
import "./jitless.ts";
import {
  beginningOfTable,
  briefFromRoute,
  briefToYaml,
  debriefFlight,
  type ImportedLog,
  joinLogs,
  joinPointLists,
  type ListedPoint,
  pointOf,
  readBrief,
  readLog,
  readStandard,
  type TableBeginning,
  TEST_STANDARDS,
  UnusableInput,
} from "../src/index.ts";
import type { OpenRequest, RouteOffer, WorkerMessage } from "./messages.ts";
import { BEGINNING_BYTES, sortedFiles } from "./sorting.ts";

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

function readOne(file: File, columns: OpenRequest["columns"]): Promise<ImportedLog> {
  say({ kind: "reading", file: file.name, share: 0 });
  let said = 0;
  return readLog(pieces(file.stream()), file.name, {
    ...(columns ? { csvColumns: columns } : {}),
    onProgress: (bytes) => {
      if (performance.now() - said < 50) return;
      said = performance.now();
      say({ kind: "reading", file: file.name, share: bytes / file.size });
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

/** Its waypoints and the points of its routes, each once. */
const waypointsOf = (log: ImportedLog): readonly ListedPoint[] => {
  const all = [...log.waypoints, ...log.routes.flatMap((route) => route.points)];
  const points = all.filter(({ ident }) => ident !== "").map(pointOf);
  return joinPointLists([{ points, runways: [] }]).points;
};

async function open({ files, route, flight, columns, standard: chosen }: OpenRequest): Promise<void> {
  const { logs, brief: briefFile, standard: schoolFile, leftOut } = await sortedFiles(files);
  if (logs.length === 0) {
    const file = (briefFile ?? schoolFile)?.name ?? "";
    throw new UnusableInput([{ code: "no-log-given", severity: "error", where: { file }, facts: {} }]);
  }
  // The brief first: it is short, and a mistake in it is said at once.
  const written = briefFile ? { file: briefFile.name, text: await briefFile.text() } : null;
  const briefDraft = written ? readBrief(written.text, written.file) : null;
  const school = schoolFile ? readStandard(await schoolFile.text(), schoolFile.name) : null;
  const read: ImportedLog[] = [];
  const unread: { readonly file: File; readonly error: UnusableInput }[] = [];
  for (const file of logs) {
    try {
      read.push(await readOne(file, columns));
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      const table = await tableOf(file, error);
      if (table) return say({ kind: "columns", file: file.name, ...table });
      unread.push({ file, error });
    }
  }
  if (read.length === 0) throw new UnusableInput(unread.flatMap(({ error }) => error.issues));
  const log = joinLogs(read);
  say({ kind: "working" });
  const draft = route === null ? briefDraft : briefFromRoute(log.routes[route]!, log.file);
  const standard = chosen === "none" ? chosen : (TEST_STANDARDS.find(({ id }) => id === chosen) ?? school);
  const { document, series } = debriefFlight({ log, brief: draft, flight, standard });
  const routes = draft ? [] : offer(log);
  const briefText = route === null || !draft ? written : { file: "brief.yaml", text: briefToYaml(draft) };
  const drawn = [series.path, ...series.exercises].flatMap((c) => (c ? Object.values(c) : []));
  const buffers = new Set(drawn.flatMap((c) => (ArrayBuffer.isView(c) ? [c.buffer as ArrayBuffer] : [])));
  say(
    {
      kind: "done",
      flight: {
        document,
        series,
        routes,
        waypoints: waypointsOf(log),
        briefText,
        school: school?.title ?? null,
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
