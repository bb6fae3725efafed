import { describe, expect, it } from "vitest";
import type { UnusableInput } from "../../src/quantity/issue.ts";
import { debriefText, logCautions } from "../../src/report/index.ts";
import { debriefOf, gpxText, type LoggedPoint } from "../support/debriefed.ts";

/** A minute of latitude at 30 N is 1,848 m (WGS84), so 2,000 of them an hour are 1,996 kt. Due north at a speed along a meridian, a point a second; the log's heights are 1,200 m, 3,937 ft. */
const north = (knots: number): LoggedPoint[] =>
  Array.from({ length: 600 }, (_, i) => ({
    latitude: 30 + (i * knots) / 3600 / 60,
    longitude: 172.3,
    seconds: i,
  }));
const brief = (altitude: number) =>
  `brief: 1\nfixes:\n  TARNO: { lat: 30, lon: 172.3, kind: vor }\nexercises:\n  - { course: 000T, from: TARNO, scale: vor, altitude_ft: ${altitude} }\n`;
const cautionsOf = async (gpx: string, text: string | null = null) =>
  logCautions((await debriefOf(gpx, text)).document);

describe("by construction: a log that cannot be true as a whole", () => {
  it("at 450 kt it can", async () => {
    expect(await cautionsOf(gpxText(north(450)))).toEqual([]);
  });

  it("at 2,000 kt it cannot, which is said at the top", async () => {
    const { document } = await debriefOf(gpxText(north(2000)), null);
    expect(logCautions(document)[0]).toMatch(/ground speed is mostly 1,99\d kt, .* Export the log again\./);
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text.indexOf("mostly 1,99")).toBeLessThan(text.indexOf(document.caution.slice(0, 30)));
  });

  it("with its points in disorder most are left out, and that is said", async () => {
    const points = north(100).map((_, i, all) => all[(i * 37) % all.length]!);
    expect((await cautionsOf(gpxText(points)))[0]).toMatch(
      /of its 600 points cannot be true .* their times go back: sort the log by time/,
    );
  });

  it.each([
    [3937, null],
    [1200, /a height of 3,937 ft where the brief has 1,200 ft: .* in feet where metres belong\./],
    [12917, /a height of 3,937 ft where the brief has 12,917 ft: .* in metres where feet belong\./],
    [6000, null],
  ])("flown at 3,937 ft with %d ft briefed", async (altitude, words) => {
    const [first] = await cautionsOf(gpxText(north(100)), brief(altitude));
    if (words) expect(first).toMatch(words);
    else expect(first).toBeUndefined();
  });

  it("with latitude and longitude exchanged the exchange is the first that is said", async () => {
    const exchanged = north(100).map((p) => ({ ...p, latitude: p.longitude, longitude: p.latitude }));
    const error = await debriefOf(gpxText(exchanged), null).catch((e: unknown) => e);
    expect((error as UnusableInput).issues.map(({ code }) => code)).toEqual([
      "out-of-range",
      "too-few-points",
    ]);
  });
});
