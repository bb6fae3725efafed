/** What the logbook keeps in this browser, and how an older one becomes today's. */
import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from "idb";
import type { DebriefDocument, InstructorNotes } from "../../src/index.ts";
import type { OpenRequest } from "../messages.ts";

/** A file as it was given: the bytes themselves, for the one on disk may be gone by the next time. */
export interface KeptFile {
  readonly name: string;
  readonly bytes: Blob;
}

/** What the reader chose about the files: columns of a table, which flight, which route as the brief. */
export type Choices = Omit<OpenRequest, "files">;

/** Files that have come in and are not yet flights: kept before anything is read. */
export interface Arrival {
  readonly id: string;
  /** Milliseconds UTC, as all times here. */
  readonly at: number;
  readonly files: readonly KeptFile[];
  readonly choices: Choices;
  readonly labels: Labels;
  /** How often its reading was begun and not finished. */
  readonly tries: number;
}

/** What a flight is worked out from. */
export interface Source {
  readonly id: string;
  readonly files: readonly KeptFile[];
  readonly choices: Choices;
}

/** The user's own words about a flight; each may be empty. */
export interface Labels {
  readonly pilot: string;
  readonly aircraft: string;
  readonly tags: readonly string[];
}

/** What the list shows of a debrief. */
export interface Summary {
  readonly title: string;
  readonly startUtc: string | null;
  readonly endUtc: string | null;
  /** Which flight of its log, from 0. */
  readonly flight: number;
  readonly wind: DebriefDocument["wind"];
  /** How many exercises of each kind. */
  readonly exercises: Readonly<Record<string, number>>;
  /** How many of each verdict, as computed. */
  readonly verdicts: Readonly<Record<string, number>>;
  /** Of each exercise in its order its title, and each verdict by its criterion; missing where an earlier version wrote the row. */
  readonly judged?: readonly JudgedExercise[];
  /** Idents of the fixes of the brief; likewise. */
  readonly fixes?: readonly string[];
}

export interface JudgedExercise {
  readonly title: string;
  readonly verdicts: Readonly<Record<string, string>>;
}

/** One line of the logbook: small, so that a thousand are listed without touching a log. */
export interface FlightRow extends Labels {
  readonly id: string;
  readonly added: number;
  readonly opened: number;
  /** When its labels, notes, files or place in the logbook were last changed by hand: of two copies the later one counts. */
  readonly changed: number;
  /** When it was deleted; it can be put back until it is cleared away. */
  readonly deleted: number | null;
  /** Tells whether the same files have come before; null where the browser cannot work it out. */
  readonly fingerprint: string | null;
  readonly fileNames: readonly string[];
  /** Null until the flight has been worked out. */
  readonly summary: Summary | null;
  /** By which analysis the document was made; null until it has been worked out. */
  readonly analysis: number | null;
  /** How often its working out was begun and not finished. */
  readonly tries: number;
  /** What the instructor wrote: it outlives every new working out. */
  readonly notes: InstructorNotes;
  /** Why it could not be worked out, in words. */
  readonly trouble: string | null;
}

/** The document as JSON text, letter by letter as it was made. */
export interface KeptDocument {
  readonly id: string;
  readonly text: string;
}

/** A brief to fly again, or a school's standard. */
export interface Template {
  readonly name: string;
  readonly yaml: string;
  readonly saved: number;
  /** Of a standard: held against where nobody names one. */
  readonly usual?: boolean;
}

/** A list of points, as the file that was given. */
export interface PlaceList {
  readonly name: string;
  readonly bytes: Blob;
  readonly saved: number;
}

export interface LogbookSchema extends DBSchema {
  arrivals: { key: string; value: Arrival };
  flights: { key: string; value: FlightRow; indexes: { fingerprint: string } };
  sources: { key: string; value: Source };
  documents: { key: string; value: KeptDocument };
  templates: { key: string; value: Template };
  places: { key: string; value: PlaceList };
}

export type Logbook = IDBPDatabase<LogbookSchema>;
type Upgrade = IDBPTransaction<LogbookSchema, StoreNames<LogbookSchema>[], "versionchange">;

export const LOGBOOK_NAME = "hindtrack";
export const LOGBOOK_VERSION = 2;
export const NO_LABELS: Labels = { pilot: "", aircraft: "", tags: [] };
export const NO_NOTES: InstructorNotes = { remarks: [], overrules: [] };

/** Version 1 kept only the files opened last: they become an arrival, to be read like any other. */
async function fromOne(db: Logbook, upgrade: Upgrade): Promise<void> {
  const old = upgrade.objectStore("opened" as never) as unknown as {
    get(key: string): Promise<OpenRequest | undefined>;
  };
  const last = await old.get("last");
  db.deleteObjectStore("opened" as never);
  if (!last) return;
  const { files, ...choices } = last;
  await upgrade.objectStore("arrivals").put({
    id: "opened-before-the-logbook",
    at: Date.now(),
    files: files.map((file, i) => ({ name: file.name ?? `file-${i + 1}`, bytes: file })),
    choices,
    labels: NO_LABELS,
    tries: 0,
  });
}

/** Brings a logbook of any earlier version to this one; 0 is a browser that has none. */
export async function upgradeLogbook(db: Logbook, from: number, upgrade: Upgrade): Promise<void> {
  if (from < 2) {
    db.createObjectStore("arrivals", { keyPath: "id" });
    db.createObjectStore("flights", { keyPath: "id" }).createIndex("fingerprint", "fingerprint");
    db.createObjectStore("sources", { keyPath: "id" });
    db.createObjectStore("documents", { keyPath: "id" });
    db.createObjectStore("templates", { keyPath: "name" });
    db.createObjectStore("places", { keyPath: "name" });
    if (db.objectStoreNames.contains("opened" as never)) await fromOne(db, upgrade);
  }
}
