/** A logbook saved as a file goes into the logbook of this browser, flight by flight: each is there whole or not at all. */
import { strFromU8, unzipSync } from "fflate";
import { documentSchema, notesOf, withNotes } from "../../src/index.ts";
import { reading, writing } from "../store/database.ts";
import { changed } from "../store/news.ts";
import type { Choices, FlightRow, KeptFile } from "../store/schema.ts";
import { summaryOf } from "../store/summary.ts";
import { type Manifest, type ManifestFlight, manifestSchema } from "./manifest.ts";
import { MANIFEST } from "./manifest-name.ts";
import { UnusableArchive } from "./unusable.ts";

/** What came of it. */
export interface ReadArchive {
  readonly added: number;
  /** Stood here already in an earlier state. */
  readonly renewed: number;
  /** Stand here as they are in the file, or in a later state, and were left. */
  readonly left: number;
  /** Flights of which a file is missing or damaged, by their first file's name. */
  readonly damaged: readonly string[];
}

/** Flights that are unpacked at a time: some tens of megabytes. Chosen. */
const AT_A_TIME = 20;

type Entries = Readonly<Record<string, Uint8Array>>;

function unpacked(archive: Uint8Array, file: string, wanted: ReadonlySet<string>): Entries {
  try {
    return unzipSync(archive, { filter: ({ name }) => wanted.has(name) });
  } catch {
    throw new UnusableArchive(file, "the file is damaged or cut off. Take another copy of it.");
  }
}

function manifestIn(archive: Uint8Array, file: string): Manifest {
  const bytes = unpacked(archive, file, new Set([MANIFEST]))[MANIFEST];
  if (!bytes) throw new UnusableArchive(file, "it holds no logbook.");
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

function filesIn({ files }: ManifestFlight, entries: Entries): KeptFile[] | null {
  const kept = files.flatMap(({ name, path, bytes }) => {
    const found = entries[path];
    return found?.length === bytes ? [{ name, bytes: blobOf(found) }] : [];
  });
  return kept.length === files.length ? kept : null;
}

/** The document as it was saved; null where it is missing or no document of ours: it is then worked out again. */
function documentIn({ document }: ManifestFlight, entries: Entries): string | null {
  const bytes = document && entries[document.path];
  if (!bytes) return null;
  const text = strFromU8(bytes);
  try {
    return documentSchema.safeParse(JSON.parse(text)).success ? text : null;
  } catch {
    return null;
  }
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

async function keepRest(archive: Uint8Array, file: string, { templates, places }: Manifest): Promise<void> {
  const entries = unpacked(archive, file, new Set([...templates, ...places].map(({ path }) => path)));
  await writing(["templates", "places"], async (t) => {
    for (const { name, saved, path } of templates) {
      const [bytes, here] = [entries[path], await t.objectStore("templates").get(name)];
      if (bytes && (!here || here.saved < saved))
        await t.objectStore("templates").put({ name, saved, yaml: strFromU8(bytes) });
    }
    for (const { name, saved, path } of places) {
      const [bytes, here] = [entries[path], await t.objectStore("places").get(name)];
      if (bytes && (!here || here.saved < saved))
        await t.objectStore("places").put({ name, saved, bytes: blobOf(bytes) });
    }
  });
  changed("templates");
  changed("places");
}

/**
 * Of two states of a flight, the one changed last by hand stays. What is in already when the reading ends early is left
 * at the next reading, so that it can be begun again at any time.
 * @throws UnusableArchive, StorageTrouble
 */
export async function readArchive(
  archive: Uint8Array,
  file: string,
  onFlight: (done: number, of: number) => void = () => {},
): Promise<ReadArchive> {
  const manifest = manifestIn(archive, file);
  const { flights } = manifest;
  let [added, renewed, left] = [0, 0, 0];
  const damaged: string[] = [];
  for (let from = 0; from < flights.length; from += AT_A_TIME) {
    const some = flights.slice(from, from + AT_A_TIME);
    const paths = some.flatMap((f) => [...f.files.map(({ path }) => path), f.document?.path ?? ""]);
    const entries = unpacked(archive, file, new Set(paths));
    for (const [i, flight] of some.entries()) {
      onFlight(from + i, flights.length);
      const here = await reading((db) => db.get("flights", flight.id));
      const files = filesIn(flight, entries);
      if (here && here.changed >= flight.changed) left++;
      else if (!files) damaged.push(flight.files[0]!.name);
      else {
        await keepFlight(flight, files, documentIn(flight, entries));
        if (here) renewed++;
        else added++;
      }
    }
    changed("flights");
  }
  await keepRest(archive, file, manifest);
  return { added, renewed, left, damaged };
}
