import { describe, expect, it } from "vitest";
import { readLog } from "../../src/import/index.ts";
import { fixtureBytes } from "./fixtures.ts";

const read = async (name: string) => (await readLog([fixtureBytes(name)], name)).track;

describe("GPX 1.1 schema (Topografix, gpx.xsd) and GPX 1.0 by its use", () => {
  it("reads degrees as they stand, metres as feet, times as UTC", async () => {
    const track = await read("gpx-1.1-plain.gpx");
    expect(track.name).toBe("Lesson over the sea");
    expect(track.kind).toBe("gpx");
    expect([...track.latitude]).toEqual([35.6, 35.6, 35.6, 35.6, 35.6]);
    expect([...track.longitude]).toEqual([172.3, 172.300568, 172.301136, 172.301704, 172.302272]);
    expect(track.altitude[0]).toBe(3000); // 914.4 m
    expect(track.time[0]).toBe(Date.UTC(2026, 9, 17, 9, 44, 10));
    expect(track.groundSpeed).toBeUndefined();
  });

  it("reads speed (m/s) and course (true) of 1.0, and a negative one as not known", async () => {
    const track = await read("gpx-1.0-speed-course.gpx");
    expect(track.groundSpeed![0]).toBeCloseTo(100, 1); // 51.44 m/s
    expect([...track.trackAngle!]).toEqual([90, 90, 90, Number.NaN]);
    expect(track.groundSpeed![3]).toBeNaN();
  });

  it("reads speed and course in extensions by local name", async () => {
    const track = await read("gpx-extensions-speed-course.gpx");
    expect([...track.trackAngle!]).toEqual([90.5, 91.5, 92.5, 91]);
    expect(track.groundSpeed![3]).toBe(50 / (1852 / 3600));
    expect((await read("gpx-undeclared-prefix.gpx")).groundSpeed![0]).toBeCloseTo(100, 1);
  });

  it("takes no time or height from extensions", async () => {
    const track = await read("gpx-extensions-foreign-time.gpx");
    expect(track.time[0]).toBe(Date.UTC(2026, 9, 17, 9, 44, 10));
    expect(track.altitude[0]).toBe(3000);
  });

  it("reads hdop and satellites, and heights that are missing as unknown", async () => {
    expect([...(await read("gpx-hdop-fix-sat.gpx")).hdop!]).toEqual([0.7, 0.8, 0.9]);
    expect([...(await read("gpx-hdop-fix-sat.gpx")).satellites!]).toEqual([9, 9, 9]);
    const { altitude } = await read("gpx-missing-ele.gpx");
    expect([...altitude].map(Number.isNaN)).toEqual([false, true, false, true]);
  });

  it("reads offsets, fractions and times without zone as UTC", async () => {
    const base = Date.UTC(2026, 9, 17, 9, 44, 10);
    expect([...(await read("gpx-times-with-offset.gpx")).time].map((t) => t - base)).toEqual([
      0, 1000, 2000, 3000,
    ]);
    expect([...(await read("gpx-times-with-fraction.gpx")).time].map((t) => t - base)).toEqual([
      0, 1250, 2500, 3123,
    ]);
    expect([...(await read("gpx-times-without-zone.gpx")).time].map((t) => t - base)).toEqual([
      0, 1000, 2000,
    ]);
  });

  it("counts a new segment at each that has points, over all tracks", async () => {
    expect([...(await read("gpx-two-tracks-three-segments.gpx")).segment]).toEqual([0, 0, 1, 1, 2, 2]);
    expect((await read("gpx-two-tracks-three-segments.gpx")).name).toBe("Lesson over the sea");
  });

  it("puts whole segments in the order of time, and moves nothing inside them", async () => {
    const track = await read("gpx-newest-track-first.gpx");
    expect([...track.time].map((t) => (t - track.time[0]!) / 1000)).toEqual([0, 1, 5, 6, 20, 21, 22]);
    expect([...track.segment]).toEqual([0, 0, 1, 1, 2, 2, 2]);
    expect([...track.line].every((line, row) => row !== 4 || line === 5)).toBe(true);
  });

  it("reads names in UTF-16, ISO-8859-1 and Windows-1252, CDATA and the five entities", async () => {
    for (const name of ["gpx-utf16le-mark", "gpx-utf16be-mark", "gpx-utf16le-no-mark", "gpx-iso-8859-1"]) {
      expect((await read(`${name}.gpx`)).name).toBe("Übung über See");
    }
    expect((await read("gpx-windows-1252.gpx")).name).toBe("Course “TARNO”");
    expect((await read("gpx-cdata.gpx")).name).toBe("Radials & <holds>");
    expect((await read("gpx-five-entities.gpx")).name).toBe("A & B <C> \"D\" 'E' F G");
  });

  it("never takes half a value where the file is cut off", async () => {
    const track = await read("gpx-truncated-in-text.gpx");
    expect(track.time[6]).toBeNaN();
    expect(track.altitude[6]).toBe(915 / 0.3048);
  });

  it("keeps the points on both sides of a fault, with their own values", async () => {
    const track = await read("gpx-broken-midway.gpx");
    expect([...track.longitude]).toEqual([172.3, 172.300568, 172.301136, 172.301704, 172.302272]);
    expect([0, 1, 3, 4].map((row) => track.altitude[row])).toEqual(
      [914.4, 914.5, 914.7, 914.8].map((m) => m / 0.3048),
    );
  });
});

describe("OGC 07-147r2 KML 2.2 and Google's KML Reference (gx:Track)", () => {
  it("pairs the nth time with the nth coordinate, lon lat alt, in every arrangement", async () => {
    const plain = await read("gpx-1.1-plain.gpx");
    for (const name of [
      "track",
      "track-interleaved",
      "track-mode-after",
      "track-without-prefix",
      "prefixed",
      "timed-placemarks",
      "time-spans",
    ]) {
      const track = await read(`kml-${name}.kml`);
      expect([...track.time], name).toEqual([...plain.time]);
      expect([...track.longitude], name).toEqual([...plain.longitude]);
      expect([...track.latitude], name).toEqual([...plain.latitude]);
      expect([...track.altitude], name).toEqual([...plain.altitude]);
      expect(track.kind).toBe("kml");
    }
  });

  it("makes a segment of each track of a MultiTrack, and names the flight by its placemark", async () => {
    const track = await read("kml-multitrack.kml");
    expect([...track.segment]).toEqual([0, 0, 0, 1, 1]);
    expect(track.name).toBe("Flight");
  });

  it("takes heights above ground, and zeroes clamped to it, as unknown; true heights with no mode as they are", async () => {
    expect([...(await read("kml-height-above-ground.kml")).altitude].every(Number.isNaN)).toBe(true);
    expect([...(await read("kml-height-zero-on-ground.kml")).altitude].every(Number.isNaN)).toBe(true);
    expect((await read("kml-height-mode-ground.kml")).altitude[0]).toBe(3000);
  });

  it("tells each tuple's own line", async () => {
    const { line } = await read("kml-line.kml");
    expect([...line].map((l) => l - line[0]!)).toEqual([0, 1, 2, 3, 4]);
  });
});

describe("by construction: odd spellings of the same flight", () => {
  const START = Date.UTC(2026, 9, 17, 9, 44, 10);
  it.each([
    ["gpx-1.0-old-receiver.gpx"],
    ["gpx-spaces-in-values.gpx"],
    ["gpx-time-basic.gpx"],
    ["gpx-time-slashes.gpx"],
    ["gpx-time-epoch.gpx"],
    ["gpx-exponents.gpx"],
    ["gpx-leading-newline.gpx"],
    ["gpx-utf16le-bare-newline.gpx"],
    ["kml-coord-commas.kml"],
    ["kmz-several-kml.kmz"],
    ["kmz-mac-forks.kmz"],
    ["csv-decimal-comma-quoted.csv"],
    ["csv-am-pm.csv"],
    ["csv-hemispheres.csv"],
    ["csv-dms.csv"],
    ["csv-month-names.csv"],
    ["csv-repeated-headings.csv"],
    ["csv-nmea-degrees.csv"],
    ["csv-radians.csv"],
    ["csv-camel-headings.csv"],
    ["csv-clock-in-date.csv"],
    ["kml-placemarks-newest-first.kml"],
    ["gpx-mixed-offsets.gpx"],
    ["gpx-utf16-mark-declared-utf8.gpx"],
  ])("%s: same times and places", async (name) => {
    const track = await read(name);
    expect([...track.time].map((t) => t - START)).toEqual([0, 1000, 2000, 3000, 4000]);
    [172.3, 172.300568, 172.301136, 172.301704, 172.302272].forEach((longitude, i) => {
      expect(Math.abs(track.longitude[i]! - longitude)).toBeLessThan(1e-8);
      expect(Math.abs(track.latitude[i]! - 35.6)).toBeLessThan(1e-8);
    });
  });

  it("midnight as 24:00 and a leap second keep their place in the order", async () => {
    const steps = [0, 1000, 2000, 3000, 4000];
    const { time } = await read("gpx-midnight-24.gpx");
    expect([...time].map((t) => t - time[0]!)).toEqual(steps);
    // UTC counts no leap second in milliseconds of the epoch: 23:59:60 is the next midnight (POSIX, 4.16).
    const leap = (await read("gpx-leap-second.gpx")).time;
    expect([...leap].map((t) => t - leap[0]!)).toEqual([0, 1000, 2000, 3000, 4000]);
  });

  it("hemispheres in columns of their own put the flight south and west", async () => {
    const track = await read("csv-hemisphere-columns.csv");
    expect([track.latitude[0], track.longitude[4]]).toEqual([-35.6, -172.302272]);
  });

  it("a date header with the whole year is of that year", async () => {
    expect((await read("igc-date-whole-year.igc")).time[0]).toBe(START);
  });

  it("a speed in km/h where the standard has m/s is refused", async () => {
    expect((await read("gpx-extensions-speed-kmh.gpx")).groundSpeed).toBeUndefined();
  });

  it("arrays beside a KML track: course as it stands, speed by the way flown", async () => {
    const track = await read("kml-speed-course-arrays.kml");
    expect([...track.trackAngle!]).toEqual([90, 90, 90, 90, 90]);
    expect(track.groundSpeed![0]).toBeCloseTo(185.3 / 1.852, 6);
    expect((await read("kml-speed-of-no-unit.kml")).groundSpeed).toBeUndefined();
  });

  it("FXA, SIU and OAT of an IGC fix", async () => {
    const track = await read("igc-oat-fxa-siu.igc");
    expect([track.satellites![0], track.outsideAir![0]]).toEqual([9, -5]);
    // Of a circular normal, 95.45 % lie within 2.486 standard deviations of one axis (Rayleigh).
    expect(track.positionSd![0]).toBeCloseTo(12 / 2.486, 2);
  });
});
