/** The logbook keeps what it is given, whole or not at all, and says so where it cannot. */
import { openDB } from "idb";
import { describe, expect, test, vi } from "vitest";
import { arrivals, arrive, dismiss } from "../../../web/store/arrivals.ts";
import { closeLogbook, listenToTabs, logbook } from "../../../web/store/database.ts";
import {
  addFlights,
  changeRows,
  clearAway,
  documentOf,
  flightRow,
  flightRows,
  flightsOf,
  keepDocument,
  replaceSource,
  sourceOf,
} from "../../../web/store/flights.ts";
import { fingerprintOf } from "../../../web/store/identity.ts";
import { onChange } from "../../../web/store/news.ts";
import { dropPlaces, keepPlaces, placeLists } from "../../../web/store/places.ts";
import { LOGBOOK_NAME, LOGBOOK_VERSION } from "../../../web/store/schema.ts";
import { dropTemplate, keepTemplate, templates } from "../../../web/store/templates.ts";
import { documentNamed, eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./fresh.ts";

eachTestInAnEmptyBrowser();

const FILES = [file("log.gpx", "<gpx/>"), file("brief.yaml", "brief: 1")];
const NEW = { files: FILES, choices: { ...NO_CHOICES, flight: 1 }, fingerprint: "f" };
const added = async () => (await addFlights([NEW], null))[0]!;

test("files are kept on arrival, letter by letter, and lie there after the logbook was closed", async () => {
  const { id } = await arrive(FILES, NEW.choices, { pilot: "P", aircraft: "", tags: ["x"] });
  await closeLogbook();
  const [kept, ...more] = await arrivals();
  expect(more).toEqual([]);
  expect(kept).toMatchObject({ id, choices: { flight: 1 }, labels: { pilot: "P", tags: ["x"] } });
  expect(await Promise.all(kept!.files.map(async (f) => [f.name, await f.bytes.text()]))).toEqual([
    ["log.gpx", "<gpx/>"],
    ["brief.yaml", "brief: 1"],
  ]);
  await dismiss(id);
  expect(await arrivals()).toEqual([]);
});

test("an arrival becomes flights in one step: never both, never neither", async () => {
  const { id } = await arrive(FILES, NO_CHOICES);
  const rows = await addFlights([NEW, NEW], id);
  expect(await arrivals()).toEqual([]);
  expect((await flightRows()).map((row) => row.id).sort()).toEqual(rows.map((row) => row.id).sort());
  expect(new Set(rows.map((row) => row.id)).size).toBe(2);
});

test("a write that fails in the middle leaves everything as it was", async () => {
  const { id } = await arrive(FILES, NO_CHOICES);
  const uncloneable = { ...NEW, choices: { ...NO_CHOICES, columns: (() => {}) as never } };
  await expect(addFlights([NEW, uncloneable], id)).rejects.toThrow(/failed to read or write/);
  expect(await flightRows()).toEqual([]);
  expect(await arrivals()).toHaveLength(1);
});

test("a flight waits until its document is kept; its row then tells the list all it needs", async () => {
  const { id } = await added();
  expect(await flightRow(id)).toMatchObject({ summary: null, analysis: null });
  expect(await documentOf(id)).toBeNull();
  expect(await keepDocument(id, documentNamed("Radials"), 7)).toBe(true);
  expect(await flightRow(id)).toMatchObject({
    analysis: 7,
    summary: {
      title: "Radials",
      exercises: { course: 2, hold: 1 },
      verdicts: { met: 2, "not met": 1 },
    },
  });
  expect(await documentOf(id)).toMatchObject(documentNamed("Radials"));
});

test("remarks and labels outlive a new working out and other files", async () => {
  const { id } = await added();
  const remarks = [{ exercise: null, text: "Well held." }];
  await changeRows([id], () => ({ notes: { remarks, overrules: [] }, pilot: "P" }));
  await replaceSource(id, { ...NEW, files: [file("log.gpx", "<gpx/>")] });
  expect(await flightRow(id)).toMatchObject({ analysis: null, fileNames: ["log.gpx"], pilot: "P" });
  expect((await sourceOf(id))!.files).toHaveLength(1);
  await keepDocument(id, documentNamed("Again"), 8);
  expect((await documentOf(id))!.remarks).toEqual(remarks);
});

test("a document of a flight that was cleared away meanwhile is not kept", async () => {
  const { id } = await added();
  await clearAway([id]);
  expect(await keepDocument(id, documentNamed("Late"), 7)).toBe(false);
  const db = await logbook();
  expect(await Promise.all([db.count("flights"), db.count("sources"), db.count("documents")])).toEqual([
    0, 0, 0,
  ]);
});

test("the same files are known again whatever their order, other bytes and names are not", async () => {
  const [log, brief] = FILES;
  const one = await fingerprintOf([log!, brief!]);
  expect(await fingerprintOf([brief!, log!])).toBe(one);
  expect(await fingerprintOf([log!])).not.toBe(one);
  expect(await fingerprintOf([log!, file("brief.yaml", "brief: 2")])).not.toBe(one);
  expect(await fingerprintOf([log!, file("other.yaml", "brief: 1")])).not.toBe(one);
  const [row] = await addFlights([{ ...NEW, fingerprint: one }], null);
  expect((await flightsOf(one!)).map((r) => r.id)).toEqual([row!.id]);
  await changeRows([row!.id], () => ({ deleted: 1 }));
  expect(await flightsOf(one!)).toEqual([]);
});

test("templates and lists of points are kept by name", async () => {
  await keepTemplate("Lesson 6", "brief: 1");
  await keepTemplate("Lesson 6", "brief: 1\ntitle: x");
  expect(await templates()).toMatchObject([{ name: "Lesson 6", yaml: "brief: 1\ntitle: x" }]);
  await dropTemplate("Lesson 6");
  expect(await templates()).toEqual([]);
  await keepPlaces("orsa-vale.csv", new Blob(["ident,lat,lon"]));
  expect(await (await placeLists())[0]!.bytes.text()).toBe("ident,lat,lon");
  await dropPlaces("orsa-vale.csv");
  expect(await placeLists()).toEqual([]);
});

test("whoever listens hears of every change, until they stop", async () => {
  const heard: string[] = [];
  const stop = onChange((what) => heard.push(what));
  await added();
  await keepTemplate("x", "brief: 1");
  stop();
  await added();
  expect(heard).toEqual(["flights", "templates"]);
});

describe("a logbook of version 1, which kept the files opened last", () => {
  const old = async (last: unknown) => {
    const db = await openDB(LOGBOOK_NAME, 1, { upgrade: (db) => void db.createObjectStore("opened") });
    if (last) await db.put("opened", last, "last");
    db.close();
  };

  test("becomes today's with those files as an arrival", async () => {
    await old({ files: [new Blob(["<gpx/>"])], route: 0, flight: 2, columns: null });
    const [arrival] = await arrivals();
    expect(arrival).toMatchObject({ choices: { route: 0, flight: 2, columns: null } });
    expect(await arrival!.files[0]!.bytes.text()).toBe("<gpx/>");
    const db = await logbook();
    expect([...db.objectStoreNames]).not.toContain("opened");
    expect(db.version).toBe(LOGBOOK_VERSION);
  });

  test("becomes an empty one where nothing was open", async () => {
    await old(null);
    expect(await arrivals()).toEqual([]);
  });
});

describe("what stands in the way is said in words", () => {
  test("a logbook of a newer version is left alone", async () => {
    (await openDB(LOGBOOK_NAME, LOGBOOK_VERSION + 1)).close();
    await expect(flightRows()).rejects.toThrow(/written by a newer Hindtrack/);
  });

  test("a browser that keeps nothing", async () => {
    vi.spyOn(indexedDB, "open").mockImplementation(() => {
      throw new DOMException("denied", "SecurityError");
    });
    await expect(arrive(FILES, NO_CHOICES)).rejects.toThrow(/This browser keeps nothing/);
  });

  test("a full disk: the change is not kept, the flights before it are", async () => {
    await added();
    const full = new DOMException("no room", "QuotaExceededError");
    const put = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw full;
    });
    await expect(arrive(FILES, NO_CHOICES)).rejects.toThrow(/is full: the last change was not kept/);
    put.mockRestore();
    expect(await flightRows()).toHaveLength(1);
    expect(await arrivals()).toEqual([]);
  });

  test("a newer tab wants the logbook: this one lets go, says so, and does not take it back", async () => {
    const onGaveWay = vi.fn();
    listenToTabs({ onWaiting: () => {}, onGaveWay });
    await added();
    const newer = await openDB(LOGBOOK_NAME, LOGBOOK_VERSION + 1);
    expect(onGaveWay).toHaveBeenCalledOnce();
    await expect(flightRows()).rejects.toThrow(/Reload this tab/);
    newer.close();
  });

  test("an older tab that does not let go is named while this one waits", async () => {
    const older = await openDB(LOGBOOK_NAME, 1);
    const waiting = new Promise<void>((done) => listenToTabs({ onWaiting: done, onGaveWay: () => {} }));
    const rows = flightRows();
    await waiting;
    older.close();
    expect(await rows).toEqual([]);
  });
});
