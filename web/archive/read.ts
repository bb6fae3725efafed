/** A logbook saved as a file goes into the logbook of this browser, flight by flight: each is there whole or not at all. */
import { strFromU8 } from "fflate";
import { day, documentSchema, notesOf, withNotes } from "../../src/index.ts";
import { reading, writing } from "../store/database.ts";
import { changed } from "../store/news.ts";
import type { Choices, FlightRow, KeptFile } from "../store/schema.ts";
import { summaryOf } from "../store/summary.ts";
import { checkedBytes } from "./check-sums.ts";
import { beginsAsArchive } from "./look.ts";
import { type Manifest, type ManifestFlight, manifestSchema } from "./manifest.ts";
import { MANIFEST } from "./manifest-name.ts";
import { UnusableArchive } from "./unusable.ts";
import { zipEntries } from "./zip-entries.ts";

/** A file that is damaged or missing in the archive. */
export interface Damage {
  /** The flight as its debrief calls it, else by the name of its first file; null of what belongs to none. */
  readonly flight: string | null;
  readonly file: string;
}

/** What came of it. */
export interface ReadArchive {
  readonly added: number;
  /** Stood here already in an earlier state. */
  readonly renewed: number;
  /** Stand here as they are in the file, or in a later state, and were left. */
  readonly left: number;
  /** Files for whose sake a flight, a brief or a list of points was not taken: nothing here was changed for them. */
  readonly damaged: readonly Damage[];
  /** Flights taken whose debrief alone was damaged: it is worked out anew. */
  readonly anew: readonly string[];
  /** The end of the file is missing, or its directory is damaged. */
  readonly brokenOff: boolean;
}

/** Flights after which other tabs are told. Chosen. */
const TELL_AFTER = 20;

/** What lies at a path in the archive, checked; null where it is damaged or not there. */
type Entries = (path: string) => Uint8Array | null;

function entriesOf(archive: Uint8Array): { readonly entries: Entries; readonly whole: boolean } {
  const { byName, whole } = zipEntries(archive);
  const entries = (path: string) => {
    const entry = byName.get(path);
    return entry ? checkedBytes(archive, entry) : null;
  };
  return { entries, whole };
}

function manifestIn(archive: Uint8Array, entries: Entries, file: string): Manifest {
  const bytes = entries(MANIFEST);
  if (!bytes)
    throw new UnusableArchive(
      file,
      beginsAsArchive(archive)
        ? "it is damaged or cut off in its list of flights, so that nothing could be taken. Take another copy of it."
        : "it holds no logbook.",
    );
  let json: unknown;
  try {
    json = JSON.parse(strFromU8(bytes));
  } catch (error) {
    throw new UnusableArchive(file, `${MANIFEST} in it cannot be read (${(error as Error).message}).`);
  }
  const parsed = manifestSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const { version } = json as { version?: unknown };
  if (typeof version === "number" && version > 1)
    throw new UnusableArchive(
      file,
      `it was saved by a newer Hindtrack (version ${version}; this one reads 1).`,
    );
  const [issue] = parsed.error.issues;
  throw new UnusableArchive(
    file,
    `${MANIFEST}, ${issue!.path.join(".") || "as a whole"}: ${issue!.message}.`,
  );
}

const blobOf = (bytes: Uint8Array): Blob => new Blob([bytes.slice()]);

/** The files of a flight as they were given, and the names of those that are damaged or missing. */
function filesIn({ files }: ManifestFlight, entries: Entries): { kept: KeptFile[]; lost: string[] } {
  const kept: KeptFile[] = [];
  const lost: string[] = [];
  for (const { name, path, bytes } of files) {
    const found = entries(path);
    if (found?.length === bytes) kept.push({ name, bytes: blobOf(found) });
    else lost.push(name);
  }
  return { kept, lost };
}

/** The document as it was saved; null where it is damaged, missing or no document of ours: it is then worked out again. */
function documentIn({ document }: ManifestFlight, entries: Entries): string | null {
  const bytes = document && entries(document.path);
  if (!bytes) return null;
  const text = strFromU8(bytes);
  try {
    return documentSchema.safeParse(JSON.parse(text)).success ? text : null;
  } catch {
    return null;
  }
}

function nameOf({ files }: ManifestFlight, text: string | null): string {
  const { title, startUtc } = text === null ? { title: "", startUtc: null } : summaryOf(JSON.parse(text));
  const name = title || files[0]!.name;
  return startUtc ? `${name}, ${day(startUtc)}` : name;
}

function rowOf(flight: ManifestFlight, text: string | null): FlightRow {
  const { id, added, opened, changed, deleted, fingerprint, pilot, aircraft, tags, files } = flight;
  const document = text === null ? null : JSON.parse(text);
  const notes = flight.notes as FlightRow["notes"];
  return {
    ...{ id, added, opened, changed, deleted, fingerprint, pilot, aircraft, tags },
    notes: document ? notesOf(withNotes(document, notes)) : notes,
    fileNames: files.map(({ name }) => name),
    summary: document && summaryOf(document),
    analysis: document && flight.document!.analysis,
    trouble: null,
    tries: 0,
  };
}

async function keepFlight(flight: ManifestFlight, files: KeptFile[], text: string | null): Promise<void> {
  const row = rowOf(flight, text);
  await writing(["flights", "sources", "documents"], async (t) => {
    await t.objectStore("flights").put(row);
    await t.objectStore("sources").put({ id: row.id, files, choices: flight.choices as Choices });
    if (text === null) await t.objectStore("documents").delete(row.id);
    else await t.objectStore("documents").put({ id: row.id, text });
  });
}

/** Briefs and lists of points, where none of the name stands here that was saved later; gives those that are damaged. */
async function keepRest(entries: Entries, { templates, places }: Manifest): Promise<Damage[]> {
  const read = <T extends { readonly path: string }>(all: readonly T[]) =>
    all.map((one) => ({ ...one, bytes: entries(one.path) }));
  const [briefs, lists] = [read(templates), read(places)];
  await writing(["templates", "places"], async (t) => {
    const store = t.objectStore("templates");
    // which standard is the usual one is chosen here; the file's choice counts where there is none
    const chosen = (await store.getAll()).some(({ usual }) => usual);
    for (const { name, saved, usual, bytes } of briefs) {
      const here = await store.get(name);
      const isUsual = chosen ? here?.usual : usual;
      if (bytes && (!here || here.saved < saved))
        await store.put({ name, saved, yaml: strFromU8(bytes), ...(isUsual && { usual: isUsual }) });
    }
    for (const { name, saved, bytes } of lists) {
      const here = await t.objectStore("places").get(name);
      if (bytes && (!here || here.saved < saved))
        await t.objectStore("places").put({ name, saved, bytes: blobOf(bytes) });
    }
  });
  changed("templates");
  changed("places");
  return [...briefs, ...lists].flatMap(({ name, bytes }) => (bytes ? [] : [{ flight: null, file: name }]));
}

/**
 * Of two states of a flight, the one changed last by hand stays. What is in already when the reading ends early is left
 * at the next reading, so that it can be begun again at any time. What is damaged is named and changes nothing here.
 * @throws UnusableArchive, StorageTrouble
 */
export async function readArchive(
  archive: Uint8Array,
  file: string,
  onFlight: (done: number, of: number) => void = () => {},
): Promise<ReadArchive> {
  const { entries, whole } = entriesOf(archive);
  const manifest = manifestIn(archive, entries, file);
  const { flights } = manifest;
  let [added, renewed, left] = [0, 0, 0];
  const damaged: Damage[] = [];
  const anew: string[] = [];
  for (const [i, flight] of flights.entries()) {
    onFlight(i, flights.length);
    const here = await reading((db) => db.get("flights", flight.id));
    if (here && here.changed >= flight.changed) {
      left++;
      continue;
    }
    const { kept, lost } = filesIn(flight, entries);
    const text = documentIn(flight, entries);
    const name = nameOf(flight, text);
    if (lost.length > 0) {
      damaged.push(...lost.map((file) => ({ flight: name, file })));
      continue;
    }
    await keepFlight(flight, kept, text);
    if (flight.document && text === null) anew.push(name);
    if (here) renewed++;
    else added++;
    if (i % TELL_AFTER === 0) changed("flights");
  }
  changed("flights");
  damaged.push(...(await keepRest(entries, manifest)));
  return { added, renewed, left, damaged, anew, brokenOff: !whole };
}
