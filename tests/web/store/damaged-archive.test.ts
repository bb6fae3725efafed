/** A saved logbook that was damaged or cut off: what is whole is taken, what is not is named and changes nothing. The ZIPs and their check sums are another library's (fflate). */
import { IDBFactory } from "fake-indexeddb";
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../../web/archive/check-sums.ts";
import { readArchive } from "../../../web/archive/read.ts";
import { writeArchive } from "../../../web/archive/write.ts";
import { zipEntries } from "../../../web/archive/zip-entries.ts";
import { archiveWords } from "../../../web/archive-words.ts";
import { closeLogbook } from "../../../web/store/database.ts";
import { addFlights, changeRows, flightRows, sourceOf } from "../../../web/store/flights.ts";
import { keepPlaces, placeLists } from "../../../web/store/places.ts";
import { keepTemplate, templates } from "../../../web/store/templates.ts";
import { eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./fresh.ts";

eachTestInAnEmptyBrowser();

const SAVED = "2026-10-20T00:00:00.000Z";
const LOGS = ["one.gpx", "two.gpx", "three.gpx"];
/** Text that packs badly, so that the log takes most of its entry. */
const textOf = (name: string): string =>
  Array.from({ length: 400 }, (_, i) => `${name} ${((i + 1) * 7919 * name.length) % 99991}`).join("\n");

/** Three flights of a log and a brief each, a template and a list of points; the file that they are saved in. */
async function saved(): Promise<Uint8Array> {
  for (const name of LOGS)
    await addFlights(
      [
        {
          files: [file(name, textOf(name)), file(name.replace("gpx", "yaml"), `brief: ${textOf(name)}`)],
          choices: NO_CHOICES,
          fingerprint: null,
        },
      ],
      null,
    );
  await keepTemplate("Lesson 6", "brief: 1");
  await keepPlaces("vale.csv", new Blob(["ident,lat,lon\nTARNO,35.6,172.3"]));
  return new Uint8Array(await (await writeArchive(SAVED)).arrayBuffer());
}

async function anotherBrowser(): Promise<void> {
  await closeLogbook();
  globalThis.indexedDB = new IDBFactory();
}

const entryOf = (archive: Uint8Array, ending: string) =>
  [...zipEntries(archive).byName].find(([name]) => name.endsWith(ending))![1];

/** One bit turned in the middle of what was packed. */
function hurt(archive: Uint8Array, ending: string): Uint8Array {
  const { start, packedSize } = entryOf(archive, ending);
  const copy = archive.slice();
  copy[start + (packedSize >> 1)]! ^= 4;
  return copy;
}

/** The first files of the flights in the logbook, each held against what was given. */
async function logsHere(): Promise<string[]> {
  const names: string[] = [];
  for (const { id } of await flightRows()) {
    const { name, bytes } = (await sourceOf(id))!.files[0]!;
    expect(await bytes.text()).toBe(textOf(name));
    names.push(name);
  }
  return names.sort();
}

it("CRC-32 of the digits 1 to 9 is CBF43926 (the usual check value, from memory)", () => {
  expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
});

describe("a damaged logbook file", () => {
  it.each(["two.gpx", "two.yaml"])(
    "one bit of %s: its flight is named with the file, the others are taken",
    async (name) => {
      const archive = hurt(await saved(), name);
      await anotherBrowser();
      const read = await readArchive(archive, "logbook.zip");
      expect(read).toMatchObject({
        added: 2,
        damaged: [{ flight: "two.gpx", file: name }],
        brokenOff: false,
      });
      expect(await logsHere()).toEqual(["one.gpx", "three.gpx"]);
      const words = archiveWords("logbook.zip", read).join("\n");
      expect(words).toContain("2 flights added");
      expect(words).toContain(
        `damaged or missing in it: ${name === "two.gpx" ? name : "two.yaml of two.gpx"}. This flight was not taken`,
      );
    },
  );

  it("nothing that stands here is overwritten by it, however much later it was saved", async () => {
    const archive = await saved();
    const rows = await flightRows();
    await changeRows(
      rows.map(({ id }) => id),
      () => ({ pilot: "stands here", changed: 1 }),
    );
    const later = await templates();
    await keepTemplate("Lesson 6", "brief: mine");
    expect(later[0]!.yaml).toBe("brief: 1");
    const read = await readArchive(hurt(hurt(archive, "two.gpx"), "vale.csv"), "logbook.zip");
    expect(read).toMatchObject({
      renewed: 2,
      damaged: [
        { flight: "two.gpx", file: "two.gpx" },
        { flight: null, file: "vale.csv" },
      ],
    });
    const now = await flightRows();
    const pilotOf = (name: string) => now.find(({ fileNames }) => fileNames[0] === name)!.pilot;
    expect(LOGS.map(pilotOf)).toEqual(["", "stands here", ""]);
    expect(await (await placeLists())[0]!.bytes.text()).toContain("TARNO");
    expect((await templates())[0]!.yaml).toBe("brief: mine");
  });

  it("taken in again from a whole copy, what was damaged comes in", async () => {
    const archive = await saved();
    await anotherBrowser();
    await readArchive(hurt(archive, "two.gpx"), "logbook.zip");
    expect(await readArchive(archive, "logbook.zip")).toMatchObject({ added: 1, left: 2, damaged: [] });
    expect(await logsHere()).toEqual(["one.gpx", "three.gpx", "two.gpx"]);
  });

  it("cut off anywhere behind its list of flights, it gives every flight that lies before the cut", async () => {
    const archive = await saved();
    const ends = LOGS.map((name) => {
      const { start, packedSize } = entryOf(archive, name.replace("gpx", "yaml"));
      return { name, end: start + packedSize };
    });
    const manifest = entryOf(archive, "hindtrack-logbook.json");
    // past the descriptor of the list of flights (16 bytes, APPNOTE 4.3.9)
    const from = manifest.start + manifest.packedSize + 16;
    for (let cut = from; cut < archive.length; cut += Math.ceil((archive.length - from) / 25)) {
      await anotherBrowser();
      const read = await readArchive(archive.slice(0, cut), "logbook.zip");
      expect(read.brokenOff).toBe(true);
      const whole = ends.filter(({ end }) => end + 16 <= cut).map(({ name }) => name);
      expect(await logsHere()).toEqual(whole.sort());
      expect(new Set(read.damaged.flatMap(({ flight }) => flight ?? [])).size).toBe(
        LOGS.length - whole.length,
      );
      expect(archiveWords("logbook.zip", read).join("\n")).toMatch(/its end is cut off or damaged/);
    }
  });

  it("a damaged directory loses nothing that lies before it", async () => {
    const archive = await saved();
    const copy = archive.slice();
    // the last 22 bytes end the directory (APPNOTE 4.3.16); where it begins stands 16 bytes in
    const directory = new DataView(copy.buffer).getUint32(copy.length - 6, true);
    copy.fill(0, directory + 60, directory + 200);
    await anotherBrowser();
    expect(await readArchive(copy, "logbook.zip")).toMatchObject({ added: 3, damaged: [], brokenOff: true });
    expect(await logsHere()).toHaveLength(3);
  });

  it("a damaged list of flights is refused in words", async () => {
    const archive = hurt(await saved(), "hindtrack-logbook.json");
    await anotherBrowser();
    await expect(readArchive(archive, "logbook.zip")).rejects.toThrow(
      /^logbook\.zip: it is damaged or cut off in its list of flights/,
    );
  });
});

it("a ZIP within a log is not taken for the end of a logbook that was cut off", () => {
  const inner = zipSync({ "doc.kml": [new TextEncoder().encode("<kml/>"), { level: 0 }] });
  const outer = zipSync({ "a.txt": new Uint8Array([1]), "log.kmz": [inner, { level: 0 }] });
  const { start, packedSize } = zipEntries(outer).byName.get("log.kmz")!;
  const cut = zipEntries(outer.slice(0, start + packedSize));
  expect(cut.whole).toBe(false);
  expect([...cut.byName.keys()]).toEqual(["a.txt", "log.kmz"]);
});
