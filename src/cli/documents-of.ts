/** The debriefs of one file of a folder: made, or taken as they were made before. */
import { createHash } from "node:crypto";
import { readdir, readFile, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { threadId } from "node:worker_threads";
import {
  ANALYSIS_VERSION,
  type DebriefDocument,
  debriefFlight,
  documentSchema,
  fileStem,
  readLog,
} from "../index.ts";
import { type FolderFlight, KEPT } from "./folder.ts";
import { nearMiddle, openBrief, openBytes, openPoints, openStandard } from "./open-beside.ts";
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

interface Documents {
  readonly documents: readonly DebriefDocument[];
  /** All of them were there. */
  readonly reused: boolean;
  /** Paths of debriefs that were damaged and were made again. */
  readonly mended: readonly string[];
  /** Paths of debriefs beside the log that are damaged and were left. */
  readonly broken: readonly string[];
}

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

/** A kept debrief that is none, or of another version; says what to do. */
export class UnusableDebrief extends Error {}

/** A document as it was written; throws what a person can read where it is not one. */
function documentOf(text: string): DebriefDocument {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new UnusableDebrief("this debrief is cut off or damaged");
  }
  if ((json as { format?: unknown } | null)?.format !== "hindtrack-debrief")
    throw new UnusableDebrief("it is called a debrief and holds none");
  const parsed = documentSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const at = parsed.error.issues[0]?.path.join(".") ?? "";
  throw new UnusableDebrief(`this debrief was made by another version (at ${at})`);
}

/** The document as it was made before; where it is damaged why, null where there is none. */
async function madeBefore(path: string): Promise<DebriefDocument | UnusableDebrief | null> {
  try {
    return documentOf(await readFile(path, "utf8"));
  } catch (error) {
    return error instanceof UnusableDebrief ? error : null;
  }
}

/** Those of the debriefs beside a log that are damaged. */
async function brokenAmong(paths: readonly string[]): Promise<string[]> {
  const made = await Promise.all(paths.map(madeBefore));
  return paths.filter((_, i) => made[i] instanceof UnusableDebrief);
}

/** Documents that were made from this log before it, its brief or the analysis changed. */
async function removeOlder(folder: string, own: ReadonlySet<string>): Promise<void> {
  const [first = ""] = own;
  const stem = first.replace(KEPT, "");
  for (const other of await readdir(folder)) {
    if (!own.has(other) && KEPT.test(other) && other.replace(KEPT, "") === stem)
      await rm(join(folder, other), { force: true });
  }
}

/** Who never came so far from where it began flew nothing to debrief. As in the analysis' own choice. */
const WENT_SOMEWHERE_NM = 2;

/** The flights of a log beside the one that was debriefed, which is the longest. */
const othersIn = ({ flights, flight }: DebriefDocument["log"]): number[] =>
  flights.flatMap(({ farthestNm }, i) => (i === flight || farthestNm < WENT_SOMEWHERE_NM ? [] : [i]));

/** A log is read, and held against its brief, at most once, however many flights are in it. */
function debriefing({ flight, settings }: FlightTask, bytes: Buffer) {
  const opening = async () => {
    const log = await readLog([bytes], flight.name);
    const { standard, points } = await openSettings(settings);
    const known = points && { ...points, near: nearMiddle(log) };
    const brief = flight.brief === null ? null : await openBrief(flight.brief, known);
    return { log, brief, standard, runways: points?.runways ?? [] };
  };
  let opened: ReturnType<typeof opening> | null = null;
  return async (which: number | null): Promise<DebriefDocument> => {
    opened ??= opening();
    return debriefFlight({ ...(await opened), flight: which }).document;
  };
}

/** What a log, its brief, the settings and the analysis come to: another of them makes another debrief. */
async function keyOf({ flight, settings }: FlightTask, bytes: Buffer): Promise<string> {
  const brief = flight.brief ? await openBytes(flight.brief) : null;
  const lengths = `${bytes.length} ${brief ? brief.length : "-"}`;
  const hash = createHash("sha256").update(`${ANALYSIS_VERSION} ${settings.key} ${lengths} `);
  return hash
    .update(bytes)
    .update(brief ?? "")
    .digest("hex")
    .slice(0, KEY_LENGTH);
}

async function ofLog(task: FlightTask): Promise<Documents> {
  const { flight, out } = task;
  const bytes = await openBytes(flight.path);
  const key = await keyOf(task, bytes);
  const debrief = debriefing(task, bytes);
  const folder = out && join(out, dirname(flight.name));
  const own = new Set<string>();
  const mended: string[] = [];
  let reused = true;
  const document = async (which: number | null): Promise<DebriefDocument> => {
    const name = `${fileStem(flight.name)}${which === null ? "" : `.flight-${which + 1}`}.${key}.debrief.json`;
    own.add(name);
    const path = folder && join(folder, name);
    const before = path && (await madeBefore(path));
    if (before && !(before instanceof UnusableDebrief)) return before;
    reused = false;
    const made = await debrief(which);
    if (path && before) mended.push(path);
    if (path) await writeWhole(path, `${JSON.stringify(made, null, 2)}\n`, `${process.pid}-${threadId}`);
    return made;
  };
  const documents = [await document(null)];
  for (const other of othersIn(documents[0]!.log)) documents.push(await document(other));
  if (folder && !reused) await removeOlder(folder, own);
  return { documents, reused, mended, broken: await brokenAmong(flight.kept) };
}

/** The debriefs of a file: one for each flight of a log that went anywhere, the longest first. */
export async function documentsOf(task: FlightTask): Promise<Documents> {
  if (task.flight.kind === "log") return ofLog(task);
  const { path } = task.flight;
  const document = documentOf((await openBytes(path)).toString("utf8"));
  return { documents: [document], reused: true, mended: [], broken: [] };
}
