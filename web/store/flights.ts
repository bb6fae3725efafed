/** The flights of the logbook: their rows, what they are worked out from, and their documents. */
import type { DebriefDocument } from "../../src/index.ts";
import { reading, writing } from "./database.ts";
import { newId } from "./identity.ts";
import { changed } from "./news.ts";
import {
  type Choices,
  type FlightRow,
  type KeptFile,
  type Labels,
  NO_LABELS,
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
export type RowChange = Partial<Omit<FlightRow, "id" | "added" | "analysis" | "summary">>;

const rowOf = ({ files, labels = NO_LABELS, fingerprint }: NewFlight, now: number): FlightRow => ({
  id: newId(),
  added: now,
  opened: now,
  deleted: null,
  fingerprint,
  fileNames: files.map(({ name }) => name),
  summary: null,
  analysis: null,
  trouble: null,
  remarks: [],
  ...labels,
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

/** The document as it was worked out, with what people said about the flight; null where there is none yet. */
export const documentOf = (id: string): Promise<DebriefDocument | null> =>
  reading(async (db) => {
    const t = db.transaction(["flights", "documents"]);
    const [row, kept] = await Promise.all([
      t.objectStore("flights").get(id),
      t.objectStore("documents").get(id),
    ]);
    return row && kept ? { ...JSON.parse(kept.text), remarks: row.remarks } : null;
  });

/** Changes rows one by one where they still stand. @throws StorageTrouble */
export async function changeRows(
  ids: readonly string[],
  change: (row: FlightRow) => RowChange,
): Promise<void> {
  await writing(["flights"], async (t) => {
    const store = t.objectStore("flights");
    for (const id of ids) {
      const row = await store.get(id);
      if (row) await store.put({ ...row, ...change(row) });
    }
  });
  changed("flights");
}

/**
 * Keeps the document of a flight as it was worked out by an analysis. False where the flight is gone.
 * @throws StorageTrouble
 */
export async function keepDocument(
  id: string,
  document: DebriefDocument,
  analysis: string,
): Promise<boolean> {
  const summary = summaryOf(document);
  const stands = await writing(["flights", "documents"], async (t) => {
    const store = t.objectStore("flights");
    const row = await store.get(id);
    if (!row) return false;
    await store.put({ ...row, summary, analysis, trouble: null });
    await t.objectStore("documents").put({ id, text: JSON.stringify(document) });
    return true;
  });
  changed("flights");
  return stands;
}

/** Other files or choices for a flight, as when its brief is edited; it then waits to be worked out. @throws StorageTrouble */
export async function replaceSource(id: string, { files, choices, fingerprint }: NewFlight): Promise<void> {
  await writing(["flights", "sources"], async (t) => {
    const row = await t.objectStore("flights").get(id);
    if (!row) return;
    const fileNames = files.map(({ name }) => name);
    await t.objectStore("flights").put({ ...row, fingerprint, fileNames, analysis: null });
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
