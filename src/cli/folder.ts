/** What lies in a folder of flights: logs with the briefs beside them, and debrief documents. */
import type { Dirent } from "node:fs";
import { open, readdir } from "node:fs/promises";
import { dirname, join, relative, resolve } from "node:path";
import { fileStem } from "../index.ts";
import { UnusableFile } from "./output.ts";

export interface FolderFlight {
  readonly kind: "log" | "document";
  readonly path: string;
  /** From the folder, with / between its parts: what a person calls the flight. */
  readonly name: string;
  /** What should have been flown: only of a log. */
  readonly brief: string | null;
  /** Of a log, the debriefs of it that a run kept beside it: not counted, only looked at. */
  readonly kept: readonly string[];
  /** Of a document, the name of its log where it lies beside it. */
  readonly log: string | null;
}

const LOG = /\.(gpx|kml|kmz|igc|csv|gz|zip)$/i;
/** Tables that this program writes are no logs. */
const OUR_TABLE = /(^|\.)(exercises|laps|verdicts|legs|points|flights)\.csv$/i;
const BRIEF_ENDINGS = [".yaml", ".yml", ".json"];
/** How a debrief is named that `--out` keeps of a log: by its stem, which of its flights where not the longest, and a key of all that it was made from. */
export const KEPT = /(?:\.flight-\d+)?\.[0-9a-f]{12}\.debrief\.json$/;
/** A document names its format within its first lines; so much of a file is looked at. */
const BEGINNING = 200;
/** A file of this name is meant to be a document, whatever stands in it. */
const DOCUMENT_NAME = /\.debrief\.json$/i;

export interface FolderFlights {
  /** In the order of their names; logs first, so that of a flight that is there twice the log counts. */
  readonly flights: readonly FolderFlight[];
  /** What was chosen where there was a choice. */
  readonly notes: readonly string[];
  /** What could not be looked into, and why. */
  readonly unreadable: readonly string[];
}

/** Whether a JSON file says at its beginning that it is a debrief document. */
async function isDocument(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(BEGINNING), 0, BEGINNING, 0);
    return buffer.toString("utf8", 0, bytesRead).includes('"hindtrack-debrief"');
  } finally {
    await file.close();
  }
}

/** The name without its last ending, or two where the last only says how it is packed. */
const stem = (name: string): string => name.replace(/\.gz$/i, "").replace(/\.[^.]+$/, "");

/** The briefs of the same name beside a log, else those for the whole folder; the first is taken. */
function briefsBeside(name: string, files: ReadonlySet<string>): string[] {
  const of = (stem: string) =>
    BRIEF_ENDINGS.map((ending) => `${stem}${ending}`).filter((brief) => files.has(brief));
  const own = of(stem(name));
  return own.length > 0 ? own : of("brief");
}

class Search {
  readonly logs: FolderFlight[] = [];
  readonly documents: FolderFlight[] = [];
  readonly notes: string[] = [];
  readonly unreadable: string[] = [];

  private readonly root: string;
  private readonly leftOut: string | null;

  constructor(root: string, leftOut: string | null) {
    this.root = root;
    this.leftOut = leftOut;
  }

  private async entries(folder: string): Promise<Dirent[]> {
    try {
      const entries = await readdir(folder, { withFileTypes: true });
      return entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    } catch (error) {
      const unusable = new UnusableFile(folder, "read", error as NodeJS.ErrnoException);
      if (folder === this.root) throw unusable;
      this.unreadable.push(unusable.message);
      return [];
    }
  }

  private async documentsAmong(folder: string, entries: readonly Dirent[]): Promise<Set<string>> {
    const documents = new Set<string>();
    for (const entry of entries) {
      if (entry.isDirectory() || !/\.json$/i.test(entry.name)) continue;
      const path = join(folder, entry.name);
      try {
        if (DOCUMENT_NAME.test(entry.name) || (await isDocument(path))) documents.add(entry.name);
      } catch (error) {
        this.unreadable.push(new UnusableFile(path, "read", error as NodeJS.ErrnoException).message);
      }
    }
    return documents;
  }

  async into(folder: string): Promise<void> {
    const entries = await this.entries(folder);
    const documents = await this.documentsAmong(folder, entries);
    const briefs = new Set(entries.map(({ name }) => name).filter((name) => !documents.has(name)));
    for (const entry of entries) {
      const { name } = entry;
      const path = join(folder, name);
      const called = relative(this.root, path).split(/[\\/]/).join("/");
      const flight = { path, name: called, kept: [], log: null };
      if (name.startsWith(".") || resolve(path) === this.leftOut) continue;
      if (entry.isDirectory()) await this.into(path);
      else if (documents.has(name)) this.documents.push({ ...flight, kind: "document", brief: null });
      else if (LOG.test(name) && !OUR_TABLE.test(name)) {
        const [brief, ...others] = briefsBeside(name, briefs);
        if (brief && others.length > 0)
          this.notes.push(`${flight.name}: its brief is ${brief}; ${others.join(", ")} was not used`);
        this.logs.push({ ...flight, kind: "log", brief: brief ? join(folder, brief) : null });
      }
    }
  }
}

/** Every flight in a folder and those within it; `leftOut` is where results are written. @throws UnusableFile of the folder itself */
export async function flightsIn(folder: string, leftOut: string | null): Promise<FolderFlights> {
  const search = new Search(folder, leftOut && resolve(leftOut));
  await search.into(folder);
  const { notes, unreadable } = search;
  const stemOf = ({ name, path }: FolderFlight) => join(dirname(path), fileStem(name));
  const logs = new Map(search.logs.map((log) => [stemOf(log), log]));
  const kept = new Map<string, string[]>();
  const documents: FolderFlight[] = [];
  for (const document of search.documents) {
    const { path } = document;
    const isKept = KEPT.test(path);
    const stem = path.replace(isKept ? KEPT : DOCUMENT_NAME, "");
    const log = logs.get(stem) ?? null;
    // what was kept beside a log is looked at with it, and may go once the log changed
    if (isKept && log) kept.set(stem, [...(kept.get(stem) ?? []), path]);
    else documents.push({ ...document, log: log?.name ?? null });
  }
  const withKept = search.logs.map((log) => ({ ...log, kept: kept.get(stemOf(log)) ?? [] }));
  return { flights: [...withKept, ...documents], notes, unreadable };
}
