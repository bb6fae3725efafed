import { describe, expect, it } from "vitest";
import { readAngle } from "../../src/import/csv-angle.ts";
import { tableBeginning } from "../../src/import/csv-beginning.ts";
import { CsvTimeReader } from "../../src/import/csv-time.ts";
import { readLog } from "../../src/import/index.ts";
import { near } from "../support/near.ts";
import { fixtureBytes } from "./fixtures.ts";

const read = async (name: string) => (await readLog([fixtureBytes(`csv-${name}.csv`)], name)).track;
const START = Date.UTC(2026, 9, 17, 9, 44, 10);

describe("by construction: tables of one flight, written in the ways of many programs", () => {
  it.each([
    ["comma", 0],
    ["semicolon-decimal-comma", 0],
    ["tab", 0],
    ["bar", 0],
    ["date-and-time-apart", 0],
    ["local-time-with-offset", 0],
    ["units-beneath", 0],
    ["epoch-seconds", 0],
    ["epoch-milliseconds", 500],
    ["date-month-first", 0],
    ["quotes", 0],
    ["preamble", 0],
    ["utf16", 0],
  ])("%s: same times and places", async (name, later) => {
    const track = await read(name);
    expect([...track.time].map((t) => t - START - later)).toEqual([0, 1000, 2000, 3000, 4000]);
    expect([...track.longitude]).toEqual([172.3, 172.300568, 172.301136, 172.301704, 172.302272]);
    expect([...track.latitude]).toEqual([35.6, 35.6, 35.6, 35.6, 35.6]);
    for (const height of track.altitude) if (!Number.isNaN(height)) near(height, 3000, 1e-6, "ft", name);
  });

  it("reads units in the headings and beneath them", async () => {
    near((await read("semicolon-decimal-comma")).groundSpeed![0]!, 100, 1e-9, "kt");
    const beneath = await read("units-beneath");
    near(beneath.trueAirspeed![0]!, 100, 1e-9, "kt");
    expect(beneath.headingTrue![0]).toBe(95);
  });

  it("reads what was measured of the air, each in its own column", async () => {
    const t = await read("measured-air");
    const all = [
      t.headingTrue,
      t.headingMagnetic,
      t.trueAirspeed,
      t.indicatedAirspeed,
      t.pressureAltitude,
      t.outsideAir,
    ];
    expect([...all, t.hdop, t.trackAngle].map((c) => c![4])).toEqual([95, 92.5, 104, 99, 2950, 9.1, 0.8, 90]);
  });

  it("uses a heading that does not say true or magnetic only when told which it is", async () => {
    const bytes = fixtureBytes("csv-unclear-heading.csv");
    const silent = await readLog([bytes], "heading");
    expect([silent.track.headingTrue, silent.track.headingMagnetic]).toEqual([undefined, undefined]);
    const told = await readLog([bytes], "heading", { csvColumns: { headingMagnetic: "Heading" } });
    expect(told.track.headingMagnetic![0]).toBe(95);
    expect(told.issues).toEqual([]);
  });

  it("reads a table in another language by the names that it is told", async () => {
    const text = "Uhrzeit;Breite;Länge;Höhe (m)\n2026-10-17T09:44:10Z;35,6;172,3;914,4\n";
    const csvColumns = { time: "Uhrzeit", latitude: "Breite", longitude: "Länge", altitude: "Höhe (m)" };
    const { track } = await readLog([new TextEncoder().encode(text)], "flug.csv", { csvColumns });
    expect([track.time[0], track.latitude[0], track.longitude[0]]).toEqual([START, 35.6, 172.3]);
    near(track.altitude[0]!, 3000, 1e-9, "ft");
  });

  it("passes midnight where there are no dates", async () => {
    const { time } = await read("time-of-day-midnight");
    expect([...time].map((t) => t - time[0]!)).toEqual([0, 1000, 2000, 3000]);
  });

  it("refuses airspeeds that do not fit the way flown", async () => {
    expect((await read("implausible-airspeed")).trueAirspeed).toBeUndefined();
  });
});

describe("by construction: a table whose columns the caller names", () => {
  const bytes = (text: string) => [new TextEncoder().encode(text)];
  const rows = "2026-10-17T09:44:10Z;35,6;172,3;914,4;180\n2026-10-17T09:44:11Z;35,6;172,301;914,4;180\n";

  it("by number where there are no headings, with the unit behind it", async () => {
    const csvColumns = {
      time: "1",
      latitude: "2",
      longitude: "3",
      altitude: "4 [m]",
      groundSpeed: "5 [km/h]",
    };
    const { track, issues } = await readLog(bytes(rows), "bare.csv", { csvColumns });
    expect([track.length, track.time[0], track.latitude[0], track.longitude[1]]).toEqual([
      2,
      START,
      35.6,
      172.301,
    ]);
    near(track.altitude[0]!, 3000, 1e-9, "ft");
    expect([...track.line]).toEqual([1, 2]);
    expect(issues).toEqual([]);
  });

  it("by number even where a value of the first row reads like one, and with a unit against the heading's own", async () => {
    const csvColumns = { latitude: "1", longitude: "2", altitude: "3 [m]" };
    const { track } = await readLog(bytes("35.6,172.3,2\n35.6,172.301,2\n"), "two.csv", { csvColumns });
    near(track.altitude[0]!, 2 / 0.3048, 1e-9, "ft");
    const told = await readLog(bytes("lat,lon,alt (ft)\n35.6,172.3,2\n"), "told.csv", { csvColumns });
    near(told.track.altitude[0]!, 2 / 0.3048, 1e-9, "ft");
  });

  it("by number beneath headings, and by a heading that lacks its unit", async () => {
    const csvColumns = { time: "Uhrzeit", latitude: "2", longitude: "3", altitude: "Höhe [m]" };
    const text = `Uhrzeit;Breite;Länge;Höhe;v\n${rows}`;
    const { track, issues } = await readLog(bytes(text), "flug.csv", { csvColumns });
    expect([track.length, track.latitude[0]]).toEqual([2, 35.6]);
    near(track.altitude[0]!, 3000, 1e-9, "ft");
    expect(issues).toEqual([]);
  });

  it("is refused without the names, and its beginning can be shown to ask for them", async () => {
    await expect(readLog(bytes(rows), "bare.csv")).rejects.toMatchObject({
      issues: [{ code: "no-headings" }],
    });
    expect(tableBeginning(`${rows}2026-10`)).toEqual({
      rows: rows
        .trim()
        .split("\n")
        .map((line) => line.split(";")),
      meanings: [null, null, null, null, null],
    });
    expect(tableBeginning(`Zeit;Breite;lon;ele (m);v\n${rows}`)!.meanings).toEqual([
      null,
      null,
      "longitude",
      "altitude",
      null,
    ]);
    expect(tableBeginning("Dear all,\nwe met at 9, flew, and landed.\n")).toBeNull();
  });
});

describe("by construction: places and times as people write them", () => {
  it.each([
    ["35.6N", 35.6],
    ["S 12.5", -12.5],
    ["12,5 W", -12.5],
    ["35°36'00\"N", 35.6],
    ["N35 36.000", 35.6],
    ["172:18:30 E", 172 + 18.5 / 60],
    ["35° 36.5'", 35 + 36.5 / 60],
    ["-0.25", -0.25],
    ["-35.6S", Number.NaN],
    ["35 75 N", Number.NaN],
    ["north", Number.NaN],
    ["", Number.NaN],
  ])("%s", (text, degrees) => {
    if (Number.isNaN(degrees)) expect(readAngle(text)).toBeNaN();
    else near(readAngle(text), degrees, 1e-12, "°", text);
  });

  const at = (time: string, date = "", toMillis: ((n: number) => number) | null = null) =>
    new CsvTimeReader().read(time, date, "", toMillis);

  it.each([
    ["2026-10-17T09:44:10Z"],
    ["17.10.2026, 9:44:10"],
    ["10/17/2026 9:44:10 AM"],
    ["17 Oct 2026 09:44:10"],
    ["Oct 17, 2026 09:44:10 UTC"],
    ["Sat Oct 17 09:44:10 UTC 2026"],
    ["20261017094410"],
    ["20261017 094410"],
    ["1792230250"],
    ["1792230250000"],
    ["1792230250000000"],
  ])("%s", (time) => {
    expect(at(time)).toBe(START);
  });

  it("reads a clock of twelve hours, one without seconds, and one without colons", () => {
    expect(at("12:05:00 AM", "2026-10-17")).toBe(Date.UTC(2026, 9, 17, 0, 5));
    expect(at("1:05 p.m.", "2026-10-17")).toBe(Date.UTC(2026, 9, 17, 13, 5));
    expect(at("094410.5", "2026-10-17")).toBe(START + 500);
    expect(at("13:05 PM", "2026-10-17")).toBeNaN();
  });

  it("counts seconds from a start where the heading says so", () => {
    expect(at("12.5", "", (s) => s * 1000)).toBe(12_500);
  });
});
