/** One flight of a folder, on a core of its own: its document made, or taken as it was made before. */
import { createHash } from "node:crypto";
import { readdir, readFile, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { threadId } from "node:worker_threads";
import {
  ANALYSIS_VERSION,
  type DebriefDocument,
  debriefFlight,
  documentSchema,
  exercisesCsv,
  fileStem,
  type Issue,
  issueSentence,
  logCautions,
  type ObservedFlight,
  observeFlight,
  readLog,
  UnusableInput,
} from "../index.ts";
import { type FolderFlight, KEPT } from "./folder.ts";
import { nearMiddle, openBrief, openBytes, openPoints, openStandard } from "./open-beside.ts";
import { UnusableFile } from "./output.ts";
import { writeWhole } from "./write-whole.ts";

export interface FlightTask {
  readonly flight: FolderFlight;
  readonly pilot: string | null;
  readonly aircraft: string | null;
  /** Where documents are kept; null: nowhere. */
  readonly out: string | null;
  readonly settings: Settings;
}

/** What all flights of a run are held against. */
export interface Settings {
  readonly standard: string | null;
  readonly points: readonly string[];
  /** Changes whenever the content of these does. */
  readonly key: string;
}

export type FlightResult =
  | {
      readonly done: true;
      readonly observed: ObservedFlight;
      /** With a line of headings. */
      readonly csv: string;
      /** What a reader must know of the log before believing the rest. */
      readonly beware: readonly string[];
      readonly reused: boolean;
    }
  | { readonly done: false; readonly why: readonly string[] };

/** Enough of a hash that no two flights of one name are taken for each other (48 bits). */
const KEY_LENGTH = 12;

/** Read once a thread; what is wrong with them was said before the flights began. */
const opened = new Map<string, ReturnType<typeof openBoth>>();
async function openBoth({ standard, points }: Settings) {
  return {
    standard: standard === null ? null : await openStandard(standard),
    points: await openPoints(points, () => {}),
  };
}
function openSettings(settings: Settings): ReturnType<typeof openBoth> {
  const known = opened.get(settings.key) ?? openBoth(settings);
  opened.set(settings.key, known);
  return known;
}

/** A document as it was written; throws what a person can read where it is not one. */
function documentOf(text: string): DebriefDocument {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new Error(`this debrief is cut off or damaged; make it again from its log.`);
  }
  const parsed = documentSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const at = parsed.error.issues[0]?.path.join(".") ?? "";
  throw new Error(`this debrief was made by another version (at ${at}); make it again from its log.`);
}

/** The document made before from the same log, brief and analysis; null where there is none, or it is damaged. */
async function madeBefore(path: string): Promise<DebriefDocument | null> {
  try {
    return documentOf(await readFile(path, "utf8"));
  } catch {
    return null;
  }
}

/** Documents that were made from this log before it, its brief or the analysis changed. */
async function removeOlder(path: string): Promise<void> {
  const own = basename(path);
  const name = own.replace(KEPT, "");
  for (const other of await readdir(dirname(path))) {
    if (other !== own && KEPT.test(other) && other.replace(KEPT, "") === name)
      await rm(join(dirname(path), other), { force: true });
  }
}

async function fromLog({
  flight,
  out,
  settings,
}: FlightTask): Promise<{ document: DebriefDocument; reused: boolean }> {
  const bytes = await openBytes(flight.path);
  const brief = flight.brief ? await openBytes(flight.brief) : null;
  const hash = createHash("sha256").update(
    `${ANALYSIS_VERSION} ${settings.key} ${bytes.length} ${brief ? brief.length : "-"} `,
  );
  const key = hash
    .update(bytes)
    .update(brief ?? "")
    .digest("hex")
    .slice(0, KEY_LENGTH);
  const stem = fileStem(flight.name);
  const path = out && join(out, dirname(flight.name), `${stem}.${key}.debrief.json`);
  const before = path && (await madeBefore(path));
  if (before) return { document: before, reused: true };
  const log = await readLog([bytes], flight.name);
  const { standard, points } = await openSettings(settings);
  const known = points && { ...points, near: nearMiddle(log) };
  const { document } = debriefFlight({
    log,
    brief: flight.brief === null ? null : await openBrief(flight.brief, known),
    standard,
    runways: points?.runways ?? [],
  });
  if (path) {
    await writeWhole(path, `${JSON.stringify(document, null, 2)}\n`, `${process.pid}-${threadId}`);
    await removeOlder(path);
  }
  return { document, reused: false };
}

async function documentFor(task: FlightTask): Promise<{ document: DebriefDocument; reused: boolean }> {
  if (task.flight.kind === "log") return fromLog(task);
  const { path } = task.flight;
  return { document: documentOf((await openBytes(path)).toString("utf8")), reused: true };
}

/** The file was not read to its end. */
const BROKEN_OFF = new Set(["broken-xml", "broken-archive", "archive-too-big"]);

/** What stands at the top of the sheet, and that the file breaks off; each with the name of the flight. */
function bewareOf(document: DebriefDocument, name: string): string[] {
  const broken = document.log.issues.filter(({ code }) => BROKEN_OFF.has(code)).map(issueSentence);
  return [...broken, ...logCautions(document)].map((sentence) =>
    sentence.startsWith(name) ? sentence : `${name}: ${sentence}`,
  );
}

/** A log is known by its name in the folder; where something is wrong with it, by where it lies. */
const issueWords = (issue: Issue, { name, path }: FolderFlight): string =>
  issueSentence(issue.where.file === name ? { ...issue, where: { ...issue.where, file: path } } : issue);

/** Never throws for what is wrong with a file: one bad file leaves the others alone. */
export default async function observe(task: FlightTask): Promise<FlightResult> {
  const { flight, pilot, aircraft } = task;
  try {
    const { document, reused } = await documentFor(task);
    const observed = observeFlight(document, { id: flight.name, pilot, aircraft });
    const csv = exercisesCsv(document, { flight: flight.name, pilot, aircraft });
    return { done: true, observed, csv, beware: bewareOf(document, flight.name), reused };
  } catch (error) {
    if (error instanceof UnusableInput)
      return { done: false, why: error.issues.map((issue) => issueWords(issue, flight)) };
    if (error instanceof UnusableFile) return { done: false, why: [error.message] };
    return { done: false, why: [`${flight.path}: ${error instanceof Error ? error.message : error}`] };
  }
}
