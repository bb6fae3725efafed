/** The logbook as a file: out and in again, letter by letter; damaged and foreign files are refused in words. */

import { IDBFactory } from "fake-indexeddb";
import { unzipSync, zipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { type DebriefDocument, debriefFlight, readLog } from "../../../src/index.ts";
import { isArchive } from "../../../web/archive/look.ts";
import { readArchive } from "../../../web/archive/read.ts";
import { writeArchive } from "../../../web/archive/write.ts";
import { closeLogbook, logbook } from "../../../web/store/database.ts";
import { addFlights, changeRows, documentOf, flightRows, keepDocument } from "../../../web/store/flights.ts";
import { keepPlaces, placeLists } from "../../../web/store/places.ts";
import { keepTemplate, templates } from "../../../web/store/templates.ts";
import { eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./fresh.ts";

eachTestInAnEmptyBrowser();

const SAVED = "2026-10-20T00:00:00.000Z";
const START = Date.UTC(2026, 9, 17, 1);
const POINTS = Array.from({ length: 300 }, (_, i) => {
  const time = new Date(START + i * 1000).toISOString();
  return `<trkpt lat="${35.6 + i * 4.6e-4}" lon="172.3"><ele>900</ele><time>${time}</time></trkpt>`;
});
const GPX = `<gpx version="1.1"><trk><trkseg>${POINTS.join("\n")}</trkseg></trk></gpx>`;

let document: DebriefDocument;
beforeAll(async () => {
  const log = await readLog([new TextEncoder().encode(GPX)], "flight.gpx");
  document = debriefFlight({ log, brief: null }).document;
});

/** Two flights, one with a document and notes, one waiting; a template and a list of points. */
async function fill(): Promise<readonly string[]> {
  const name = 'A/B: "1".gpx';
  const rows = await addFlights(
    [
      {
        files: [file(name, GPX), file("ü.yaml", "brief: 1")],
        choices: { ...NO_CHOICES, flight: 1 },
        fingerprint: "f",
      },
      { files: [file("other.gpx", "\u0000\u0001binary")], choices: NO_CHOICES, fingerprint: null },
    ],
    null,
  );
  const [one] = rows;
  await keepDocument(one!.id, document, 1);
  const notes = { remarks: [{ exercise: null, text: "Well held, “nicely”." }], overrules: [] };
  await changeRows([one!.id], () => ({ notes, pilot: "A. N.", tags: ["night"] }));
  await keepTemplate("Lesson 6", "brief: 1");
  await keepPlaces("orsa-vale.csv", new Blob(["ident,lat,lon"]));
  return rows.map(({ id }) => id);
}

const bytesOf = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer());

/** All that the database holds, blobs as text. */
async function everything() {
  const db = await logbook();
  const stores = await Promise.all([...db.objectStoreNames].map((name) => db.getAll(name)));
  const plain = async (value: unknown): Promise<unknown> => {
    if (value instanceof Blob) return [...(await bytesOf(value))];
    if (Array.isArray(value)) return Promise.all(value.map(plain));
    if (value === null || typeof value !== "object") return value;
    const entries = Object.entries(value).map(async ([key, v]) => [key, await plain(v)] as const);
    return Object.fromEntries(await Promise.all(entries));
  };
  return plain(stores);
}

async function anotherBrowser(): Promise<void> {
  await closeLogbook();
  globalThis.indexedDB = new IDBFactory();
}

test("all that was kept comes back in another browser as it was, and saved again gives the same bytes", async () => {
  await fill();
  const before = await everything();
  const archive = await bytesOf(await writeArchive(SAVED));
  await anotherBrowser();
  expect(await readArchive(archive, "logbook.zip")).toEqual({
    ...{ added: 2, renewed: 0, left: 0 },
    ...{ damaged: [], anew: [], brokenOff: false },
  });
  expect(await everything()).toEqual(before);
  expect(await bytesOf(await writeArchive(SAVED))).toEqual(archive);
});

test("any ZIP program can open it: logs and briefs lie in it as they were given", async () => {
  const [id] = await fill();
  const entries = unzipSync(await bytesOf(await writeArchive(SAVED)));
  const text = (path: string) => new TextDecoder().decode(entries[path]);
  expect(Object.keys(entries)[0]).toBe("hindtrack-logbook.json");
  expect(text(`flights/${id}/1-A_B_ _1_.gpx`)).toBe(GPX);
  expect(JSON.parse(text(`flights/${id}/debrief.json`))).toEqual(document);
  expect(text("templates/1.yaml")).toBe("brief: 1");
});

test("taken in twice, nothing is doubled; of two states the one changed last stays", async () => {
  const [id] = await fill();
  const archive = await bytesOf(await writeArchive(SAVED));
  expect(await readArchive(archive, "logbook.zip")).toMatchObject({ added: 0, renewed: 0, left: 2 });
  await changeRows([id!], (row) => ({ pilot: "later", changed: row.changed + 1 }));
  expect(await readArchive(archive, "logbook.zip")).toMatchObject({ left: 2 });
  expect((await flightRows()).find((row) => row.id === id)!.pilot).toBe("later");
  await changeRows([id!], () => ({ pilot: "earlier", changed: 1 }));
  expect(await readArchive(archive, "logbook.zip")).toMatchObject({ renewed: 1, left: 1 });
  expect((await flightRows()).find((row) => row.id === id)!.pilot).toBe("A. N.");
  expect(await flightRows()).toHaveLength(2);
  expect([await templates(), await placeLists()].map((list) => list.length)).toEqual([1, 1]);
});

test("stopped in the middle and begun again, every flight is there once", async () => {
  await fill();
  const archive = await bytesOf(await writeArchive(SAVED));
  await anotherBrowser();
  const stopped = readArchive(archive, "logbook.zip", (done) => {
    if (done === 1) throw new Error("the tab is gone");
  });
  await expect(stopped).rejects.toThrow("the tab is gone");
  expect(await flightRows()).toHaveLength(1);
  expect(await readArchive(archive, "logbook.zip")).toMatchObject({ added: 1, left: 1 });
  expect(await flightRows()).toHaveLength(2);
});

test("a document that is none of ours is not believed: the flight waits to be worked out", async () => {
  const [id] = await fill();
  const entries = unzipSync(await bytesOf(await writeArchive(SAVED)));
  const path = `flights/${id}/debrief.json`;
  const forged = zipSync({ ...entries, [path]: new TextEncoder().encode('{"format":"other"}') });
  await anotherBrowser();
  expect(await readArchive(forged, "logbook.zip")).toMatchObject({ added: 2 });
  expect((await flightRows()).map(({ summary, analysis }) => [summary, analysis])).toEqual([
    [null, null],
    [null, null],
  ]);
  expect(await documentOf(id!)).toBeNull();
});

test("a flight whose log is missing in the file is named and left out, the rest is taken", async () => {
  const [id] = await fill();
  const entries = unzipSync(await bytesOf(await writeArchive(SAVED)));
  const { [`flights/${id}/1-A_B_ _1_.gpx`]: _, ...others } = entries;
  await anotherBrowser();
  const read = await readArchive(zipSync(others), "logbook.zip");
  expect(read).toMatchObject({
    added: 1,
    damaged: [{ flight: "flight.gpx, 17 October 2026", file: 'A/B: "1".gpx' }],
    brokenOff: false,
  });
});

test.each([
  ["cut off", async () => (await bytesOf(await writeArchive(SAVED))).slice(0, 300), /damaged or cut off/],
  ["another ZIP", async () => zipSync({ "a.txt": new Uint8Array([1]) }), /holds no logbook/],
  ["not JSON", async () => zipSync({ "hindtrack-logbook.json": new Uint8Array([1]) }), /cannot be read/],
  [
    "of a later version",
    async () =>
      zipSync({
        "hindtrack-logbook.json": new TextEncoder().encode('{"format":"hindtrack-logbook","version":2}'),
      }),
    /newer Hindtrack \(version 2/,
  ],
  [
    "of another shape",
    async () =>
      zipSync({
        "hindtrack-logbook.json": new TextEncoder().encode('{"format":"hindtrack-logbook","version":1}'),
      }),
    /logbook\.zip: hindtrack-logbook\.json, saved: /,
  ],
])("%s: refused in words that name the file", async (_, make, words) => {
  await fill();
  const archive = await make();
  const before = await everything();
  await expect(readArchive(archive, "logbook.zip")).rejects.toThrow(words);
  await expect(readArchive(archive, "logbook.zip")).rejects.toThrow(/^logbook\.zip/);
  expect(await everything()).toEqual(before);
});

test("a saved logbook is told from other files by its beginning", async () => {
  expect(await isArchive(await writeArchive(SAVED))).toBe(true);
  expect(await isArchive(new Blob([zipSync({ "log.gpx": new Uint8Array([1]) })]))).toBe(false);
  expect(await isArchive(new Blob([GPX]))).toBe(false);
  expect(await isArchive(new Blob([]))).toBe(false);
});
