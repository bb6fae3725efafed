/** What lies in a folder of flights: logs with the briefs beside them, and debrief documents. */
import type { Dirent } from "node:fs";
import { open, readdir } from "node:fs/promises";
import { join, relative, resolve } from "node:path";
import { UnusableFile } from "./output.ts";

export interface FolderFlight {
  readonly kind: "log" | "document";
  readonly path: string;
  /** From the folder, with / between its parts: what a person calls the flight. */
  readonly name: string;
  /** What should have been flown: only of a log. */
  readonly brief: string | null;
}

const LOG = /\.(gpx|kml|kmz|igc|csv|gz|zip)$/i;
/** Tables that this program writes are no logs. */
const OUR_TABLE = /(^|\.)(exercises|laps|verdicts|legs|points|flights)\.csv$/i;
const BRIEF_ENDINGS = [".yaml", ".yml", ".json"];
/** A document names its format within its first lines; so much of a file is looked at. */
const BEGINNING = 200;

/** Whether a JSON file says at its beginning that it is a debrief document. */
async function isDocument(path: string): Promise<boolean> {
  const file = await open(path).catch((error) => {
    throw new UnusableFile(path, "read", error);
  });
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(BEGINNING), 0, BEGINNING, 0);
    return buffer.toString("utf8", 0, bytesRead).includes('"hindtrack-debrief"');
  } finally {
    await file.close();
  }
}

/** The name without its last ending, or two where the last only says how it is packed. */
const stem = (name: string): string => name.replace(/\.gz$/i, "").replace(/\.[^.]+$/, "");

/** The brief of the same name beside a log, else the one for the whole folder. */
function briefBeside(name: string, files: ReadonlySet<string>): string | null {
  const named = [stem(name), "brief"].flatMap((of) => BRIEF_ENDINGS.map((ending) => `${of}${ending}`));
  return named.find((brief) => files.has(brief)) ?? null;
}

async function* inFolder(folder: string, root: string, leftOut: string | null): AsyncGenerator<FolderFlight> {
  let entries: Dirent[];
  try {
    entries = await readdir(folder, { withFileTypes: true });
  } catch (error) {
    throw new UnusableFile(folder, "read", error as NodeJS.ErrnoException);
  }
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  const documents = new Set<string>();
  for (const { name } of entries) {
    if (/\.json$/i.test(name) && (await isDocument(join(folder, name)))) documents.add(name);
  }
  const briefs = new Set(entries.map(({ name }) => name).filter((name) => !documents.has(name)));
  for (const entry of entries) {
    const { name } = entry;
    const path = join(folder, name);
    const flight = { path, name: relative(root, path).split(/[\\/]/).join("/") };
    if (name.startsWith(".") || resolve(path) === leftOut) continue;
    if (entry.isDirectory()) yield* inFolder(path, root, leftOut);
    else if (documents.has(name)) yield { ...flight, kind: "document", brief: null };
    else if (LOG.test(name) && !OUR_TABLE.test(name)) {
      const brief = briefBeside(name, briefs);
      yield { ...flight, kind: "log", brief: brief && join(folder, brief) };
    }
  }
}

/** Every flight in a folder and those within it, in the order of their names; `leftOut` is where results are written. */
export async function flightsIn(folder: string, leftOut: string | null): Promise<FolderFlight[]> {
  const flights: FolderFlight[] = [];
  for await (const flight of inFolder(folder, folder, leftOut && resolve(leftOut))) flights.push(flight);
  return flights;
}
