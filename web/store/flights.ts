/** The flights of the logbook: their rows, what they are worked out from, and their documents. */
import { type DebriefDocument, withNotes } from "../../src/index.ts";
import { reading, writing } from "./database.ts";
import { newId } from "./identity.ts";
import { changed } from "./news.ts";
import {
  type Choices,
  type FlightRow,
  type KeptFile,
  type Labels,
  NO_LABELS,
  NO_NOTES,
  type Source,
} from "./schema.ts";
import { summaryOf } from "./summary.ts";

/** A flight to be: its files, and what is said about it. */
export interface NewFlight {
  readonly files: readonly KeptFile[];
  readonly choices: Choices;
  readonly labels?: Labels;
  readonly fingerprint: string | null;
}

/** What may be changed of a row by hand. */
export type RowChange = Partial<Omit<FlightRow, "id" | "added" | "summary">>;

const rowOf = ({ files, labels = NO_LABELS, fingerprint }: NewFlight, now: number): FlightRow => ({
  id: newId(),
  added: now,
  opened: now,
  changed: now,
  deleted: null,
  fingerprint,
  fileNames: files.map(({ name }) => name),
  summary: null,
  analysis: null,
  trouble: null,
  tries: 0,
  notes: NO_NOTES,
  pilot: labels.pilot,
  aircraft: labels.aircraft,
  tags: labels.tags,
});

/** Flights that wait to be worked out; the arrival that they came from goes in the same step. @throws StorageTrouble */
export async function addFlights(
  flights: readonly NewFlight[],
  arrival: string | null,
): Promise<FlightRow[]> {
  const now = Date.now();
  const rows = flights.map((flight) => rowOf(flight, now));
  await writing(["flights", "sources", "arrivals"], async (t) => {
    for (const [i, { files, choices }] of flights.entries()) {
      await t.objectStore("flights").put(rows[i]!);
      await t.objectStore("sources").put({ id: rows[i]!.id, files, choices });
    }
    if (arrival !== null) await t.objectStore("arrivals").delete(arrival);
  });
  changed("flights");
  return rows;
}

/** Every row, deleted ones too, without touching a log or a document. */
export const flightRows = (): Promise<FlightRow[]> => reading((db) => db.getAll("flights"));

export const flightRow = (id: string): Promise<FlightRow | null> =>
  reading(async (db) => (await db.get("flights", id)) ?? null);

/** Flights of the very same files, deleted ones left out. */
export const flightsOf = (fingerprint: string): Promise<FlightRow[]> =>
  reading(async (db) =>
    (await db.getAllFromIndex("flights", "fingerprint", fingerprint)).filter((row) => row.deleted === null),
  );

export const sourceOf = (id: string): Promise<Source | null> =>
  reading(async (db) => (await db.get("sources", id)) ?? null);

/** The document as it was worked out, with the instructor's notes; null where there is none yet. */
export const documentOf = (id: string): Promise<DebriefDocument | null> =>
  reading(async (db) => {
    const t = db.transaction(["flights", "documents"]);
    const [row, kept] = await Promise.all([
      t.objectStore("flights").get(id),
      t.objectStore("documents").get(id),
    ]);
    return row && kept ? withNotes(JSON.parse(kept.text), row.notes) : null;
  });

/** Changes rows by hand, one by one where they still stand. @throws StorageTrouble */
export async function changeRows(
  ids: readonly string[],
  change: (row: FlightRow) => RowChange,
): Promise<void> {
  await writing(["flights"], async (t) => {
    const store = t.objectStore("flights");
    for (const id of ids) {
      const row = await store.get(id);
      if (row) await store.put({ ...row, changed: Date.now(), ...change(row) });
    }
  });
  changed("flights");
}

/** Notes when a flight was looked at last. @throws StorageTrouble */
export const markOpened = (id: string): Promise<void> =>
  changeRows([id], (row) => ({ opened: Date.now(), changed: row.changed }));

/**
 * Keeps the document of a flight as it was worked out by an analysis. False where the flight is gone.
 * @throws StorageTrouble
 */
export async function keepDocument(
  id: string,
  document: DebriefDocument,
  analysis: number,
): Promise<boolean> {
  const summary = summaryOf(document);
  const stands = await writing(["flights", "documents"], async (t) => {
    const store = t.objectStore("flights");
    const row = await store.get(id);
    if (!row) return false;
    await store.put({ ...row, summary, analysis, trouble: null, tries: 0 });
    await t.objectStore("documents").put({ id, text: JSON.stringify(document) });
    return true;
  });
  changed("flights");
  return stands;
}

/** Counts that its working out is begun; gives how often that was so without an end, this time included. */
export async function beginFlight(id: string): Promise<number> {
  return writing(["flights"], async (t) => {
    const store = t.objectStore("flights");
    const row = await store.get(id);
    if (!row) return 0;
    await store.put({ ...row, tries: row.tries + 1 });
    return row.tries + 1;
  });
}

/** Why a flight could not be worked out by this analysis; a later one tries again. @throws StorageTrouble */
export async function keepTrouble(id: string, trouble: string, analysis: number): Promise<void> {
  await changeRows([id], (row) => ({ trouble, analysis, tries: 0, changed: row.changed }));
}

/** Other files or choices for a flight, as when its brief is edited; it then waits to be worked out. @throws StorageTrouble */
export async function replaceSource(id: string, { files, choices, fingerprint }: NewFlight): Promise<void> {
  await writing(["flights", "sources"], async (t) => {
    const row = await t.objectStore("flights").get(id);
    if (!row) return;
    const fileNames = files.map(({ name }) => name);
    await t
      .objectStore("flights")
      .put({ ...row, changed: Date.now(), fingerprint, fileNames, analysis: null });
    await t.objectStore("sources").put({ id, files, choices });
  });
  changed("flights");
}

/** For good: nothing of these flights is left. @throws StorageTrouble */
export async function clearAway(ids: readonly string[]): Promise<void> {
  await writing(["flights", "sources", "documents"], async (t) => {
    for (const id of ids) {
      await t.objectStore("flights").delete(id);
      await t.objectStore("sources").delete(id);
      await t.objectStore("documents").delete(id);
    }
  });
  changed("flights");
}
