/** The whole logbook as one file: a ZIP with a manifest, every log, brief and document, as they are kept. */
import { strToU8, Zip, ZipDeflate } from "fflate";
import { reading } from "../store/database.ts";
import { flightRows, sourceOf } from "../store/flights.ts";
import { placeLists } from "../store/places.ts";
import type { FlightRow, KeptFile } from "../store/schema.ts";
import { templatesAndStandards } from "../store/templates.ts";
import { type Manifest, type ManifestFlight, safeName } from "./manifest.ts";
import { MANIFEST } from "./manifest-name.ts";
import { UnusableArchive } from "./unusable.ts";

/** The earliest time that a ZIP can hold: the same logbook gives the same bytes. */
const MTIME = new Date(1980, 0, 1);
/** Bytes that are held before they become part of a blob, which the browser may put on disk. */
const PART_BYTES = 4_000_000;

/** Most entries, and most bytes, of a ZIP as every program reads it (APPNOTE 4.4.21 and 4.4.24). */
const MOST_ENTRIES = 65_535;
const MOST_BYTES = 0xffff_ffff;

const tooLarge = (): UnusableArchive =>
  new UnusableArchive(
    "The logbook",
    "it is too large for one file. Clear away deleted flights, or delete some that are no longer wanted.",
  );

/** Gathers the pieces of the archive. */
class Pieces {
  private readonly parts: Blob[] = [];
  private held: Uint8Array<ArrayBuffer>[] = [];
  private heldBytes = 0;
  private allBytes = 0;

  push(piece: Uint8Array): void {
    this.allBytes += piece.length;
    if (this.allBytes > MOST_BYTES) throw tooLarge();
    this.held.push(piece.slice());
    this.heldBytes += piece.length;
    if (this.heldBytes > PART_BYTES) this.flush();
  }

  private flush(): void {
    this.parts.push(new Blob(this.held));
    this.held = [];
    this.heldBytes = 0;
  }

  blob(): Blob {
    this.flush();
    return new Blob(this.parts, { type: "application/zip" });
  }
}

const filesOf = (id: string, files: readonly KeptFile[]): ManifestFlight["files"] =>
  files.map(({ name, bytes }, i) => ({
    name,
    path: `flights/${id}/${i + 1}-${safeName(name)}`,
    bytes: bytes.size,
  }));

async function flightOf(row: FlightRow): Promise<ManifestFlight | null> {
  const source = await sourceOf(row.id);
  if (!source) return null;
  const { id, added, opened, changed, deleted, fingerprint, pilot, aircraft, tags, notes } = row;
  const made = row.summary !== null && row.analysis !== null;
  return {
    ...{ id, added, opened, changed, deleted, fingerprint, pilot, aircraft },
    tags: [...tags],
    notes: { remarks: [...notes.remarks], overrules: [...notes.overrules] },
    choices: { ...(source.choices as ManifestFlight["choices"]) },
    files: filesOf(id, source.files),
    document: made ? { path: `flights/${id}/debrief.json`, analysis: row.analysis! } : null,
  };
}

async function manifestOf(saved: string) {
  const [rows, briefs, lists] = await Promise.all([flightRows(), templatesAndStandards(), placeLists()]);
  rows.sort((a, b) => a.added - b.added || (a.id < b.id ? -1 : 1));
  const flights: ManifestFlight[] = [];
  for (const row of rows) {
    const flight = await flightOf(row);
    if (flight) flights.push(flight);
  }
  const manifest: Manifest = {
    format: "hindtrack-logbook",
    version: 1,
    saved,
    flights,
    templates: briefs.map(({ name, saved, usual }, i) => ({
      ...{ name, saved, path: `templates/${i + 1}.yaml` },
      ...(usual && { usual }),
    })),
    places: lists.map(({ name, saved }, i) => ({ name, saved, path: `places/${i + 1}-${safeName(name)}` })),
  };
  return { manifest, briefs, lists };
}

const bytesOf = async (blob: Blob): Promise<Uint8Array> => new Uint8Array(await blob.arrayBuffer());

/** `onFlight` hears how many flights of how many are in it. @throws StorageTrouble, UnusableArchive where it would be too large */
export async function writeArchive(
  saved: string,
  onFlight: (done: number, of: number) => void = () => {},
): Promise<Blob> {
  const { manifest, briefs, lists } = await manifestOf(saved);
  const entries = manifest.flights.reduce((n, { files }) => n + files.length + 1, 1);
  if (entries + briefs.length + lists.length > MOST_ENTRIES) throw tooLarge();
  const pieces = new Pieces();
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    pieces.push(piece);
  });
  const add = (path: string, bytes: Uint8Array) => {
    const entry = new ZipDeflate(path, { level: 6 });
    entry.mtime = MTIME;
    zip.add(entry);
    entry.push(bytes, true);
  };
  add(MANIFEST, strToU8(JSON.stringify(manifest, null, 1)));
  for (const [i, { id, files, document }] of manifest.flights.entries()) {
    onFlight(i, manifest.flights.length);
    const source = await sourceOf(id);
    for (const [k, { path }] of files.entries()) {
      const file = source?.files[k];
      if (file) add(path, await bytesOf(file.bytes));
    }
    const kept = document && (await reading((db) => db.get("documents", id)));
    if (document && kept) add(document.path, strToU8(kept.text));
  }
  for (const [i, { yaml }] of briefs.entries()) add(manifest.templates[i]!.path, strToU8(yaml));
  for (const [i, { bytes }] of lists.entries()) add(manifest.places[i]!.path, await bytesOf(bytes));
  zip.end();
  return pieces.blob();
}
