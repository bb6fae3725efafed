/** Reads the files and works the flight out, away from the page so that the page never stands still. */
import "./jitless.ts";
import {
  briefFromRoute,
  briefToYaml,
  debriefFlight,
  type ImportedLog,
  joinLogs,
  readBrief,
  readPoints,
  readStandard,
  UnusableInput,
} from "../src/index.ts";
import { asListed, schoolStandards, standardFor } from "./kept-standards.ts";
import { listedPoints } from "./listed-points.ts";
import { middleOf, pointsOfLog } from "./log-points.ts";
import type { ListRequest, OpenRequest, RouteOffer, WorkerMessage } from "./messages.ts";
import { partedFlights } from "./parting.ts";
import { readEach, unreadSaid } from "./reading.ts";
import { sortedFiles } from "./sorting.ts";

const say = (message: WorkerMessage, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });
const sayRead = (file: string, share: number): void => say({ kind: "reading", file, share });

const offer = (log: ImportedLog): RouteOffer[] =>
  log.routes.map((route) => ({ name: route.name, idents: route.points.map((p) => p.ident) }));

async function open(request: OpenRequest): Promise<void> {
  const { files, route, flight, columns, standard: chosen } = request;
  const given = await sortedFiles(files);
  const { logs, brief: briefFile, standard: schoolFile, leftOut } = given;
  if (logs.length === 0) {
    const file = (briefFile ?? schoolFile)?.name ?? "";
    throw new UnusableInput([{ code: "no-log-given", severity: "error", where: { file }, facts: {} }]);
  }
  // The brief first: it is short, and a mistake in it is said at once.
  const written = briefFile ? { file: briefFile.name, text: await briefFile.text() } : null;
  const lists = await listedPoints();
  const tryBrief = () => written && readBrief(written.text, written.file, { ...lists, near: null });
  if (logs.length === 1) tryBrief();
  const school = schoolFile ? readStandard(await schoolFile.text(), schoolFile.name) : null;
  // of several flights each has its own brief, and a mistake in one is no matter of the others
  const parted = await partedFlights(request, given, sayRead);
  if (parted) return say(parted);
  tryBrief();
  const each = await readEach(logs, columns, sayRead, (log) => log);
  if (!("read" in each)) return say({ kind: "columns", ...each });
  const { read, unread } = each;
  if (read.length === 0) throw new UnusableInput(unread.flatMap(({ error }) => error.issues));
  const log = joinLogs(read);
  say({ kind: "working" });
  const known = { ...lists, near: middleOf(log) };
  const briefDraft = written && readBrief(written.text, written.file, known);
  const draft = route === null ? briefDraft : briefFromRoute(log.routes[route]!, log.file);
  const kept = await schoolStandards();
  const standard = standardFor({ chosen, given: school, brief: draft }, kept);
  const { document, series } = debriefFlight({ log, brief: draft, flight, standard, runways: lists.runways });
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
        waypoints: pointsOfLog(log),
        briefText,
        school: school?.title ?? null,
        standards: kept.map(asListed),
        leftOut: leftOut.map((f) => f.name),
        unread: unreadSaid(unread),
      },
    },
    [...buffers],
  );
}

async function readList({ list }: ListRequest): Promise<void> {
  say({ kind: "list", ...(await readPoints([new Uint8Array(await list.arrayBuffer())], list.name)) });
}

self.onmessage = async ({ data }: MessageEvent<OpenRequest | ListRequest>) => {
  try {
    await ("list" in data ? readList(data) : open(data));
  } catch (error) {
    if (error instanceof UnusableInput) say({ kind: "unusable", issues: error.issues });
    else say({ kind: "fault", text: error instanceof Error ? error.message : String(error) });
  }
};
