import { describe, expect, it } from "vitest";
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
