import { length, lineString } from "@turf/turf";
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { debriefText, issueSentence } from "../../src/report/index.ts";
import {
  COURSE_SAMPLES,
  courses,
  debriefOf,
  gpxText,
  type LoggedPoint,
  SAMPLES,
  sampleDebrief,
} from "../support/debriefed.ts";
import { near } from "../support/near.ts";

/** Due north at 100 kt, a point a second: on a meridian a held direction is a geodesic. */
const north = (n: number, timed = true): LoggedPoint[] =>
  Array.from({ length: n }, (_, i) => ({
    latitude: 35.6 + (i * 100) / 3600 / 60,
    longitude: 172.3,
    seconds: timed ? i : null,
  }));

describe("by construction: one straight due north", () => {
  it("without a brief a line is fitted to it, and nothing is called a deviation", async () => {
    const { document } = await debriefOf(gpxText(north(600)), null);
    documentSchema.parse(document);
    expect(document.brief).toBeNull();
    const [fitted, ...others] = courses(document);
    expect(others).toEqual([]);
    expect(fitted!.source).toBe("fitted");
    near(((fitted!.facts.courseTrueDeg + 180) % 360) - 180, 0, 0.05, "°");
    expect(fitted!.findings.map((f) => f.code)).toEqual(["tracked-within"]);
    expect(debriefText(document)).not.toMatch(/NaN|undefined|null/);
  });

  it("its crosswind is not claimed: a straight alone tells nothing across it", async () => {
    const { document } = await debriefOf(gpxText(north(600)), null);
    expect(document.wind!.knowledge).not.toBe("full");
    expect(document.wind!.fromTrueDeg).toBeNull();
    expect(debriefText(document)).toContain("cannot be told from this log");
  });

  it("its length is that of turf's sphere within 0.5 %", async () => {
    const points = north(600);
    const { document } = await debriefOf(gpxText(points), null);
    const line = lineString(points.map((p) => [p.longitude, p.latitude]));
    const nm = length(line, { units: "nauticalmiles" });
    near(document.log.distanceNm, nm, 0.005 * nm, "NM");
    expect(document.log).toMatchObject({ points: 600, used: 600, medianIntervalS: 1, longestGapS: 1 });
  });

  it("without times there is no wind, no leg, no clock, and the text says why", async () => {
    const { document } = await debriefOf(gpxText(north(600, false)), null);
    documentSchema.parse(document);
    expect(document).toMatchObject({ wind: null, legs: [], variation: null });
    expect(document.log).toMatchObject({ timed: false, startUtc: null, endUtc: null });
    expect(debriefText(document)).toContain("The log has no times, so the wind cannot be told from it.");
  });

  it("the same input gives the same document", async () => {
    const [a, b] = await Promise.all([0, 1].map(() => debriefOf(gpxText(north(300)), null)));
    expect(a!.document).toEqual(b!.document);
  });
});

describe("bad input", () => {
  it("one point is no path: said with the file and what to do", async () => {
    const error = await debriefOf(gpxText(north(1)), null).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(UnusableInput);
    const sentence = issueSentence({ ...(error as UnusableInput).issues[0]! } as Parameters<
      typeof issueSentence
    >[0]);
    expect(sentence).toMatch(/^log\.gpx.*only 1 of its 1 point can be used, and a path needs two\./);
  });

  it("a brief flown nowhere near: each exercise is there, not found, without facts", async () => {
    const { document } = await debriefOf(
      gpxText(north(600)),
      "brief: 1\ntitle: Elsewhere\nfixes:\n  TARNO: { lat: 30, lon: 160, kind: vor, declination: 2.5 }\nexercises:\n  - { course: 241, to: TARNO, scale: vor }\n",
    );
    expect(document.exercises).toHaveLength(1);
    expect(document.exercises[0]).toMatchObject({ facts: null, match: null, startUtc: null, findings: [] });
    expect(debriefText(document)).toContain("Not found on this flight.");
  });
});

describe.each(SAMPLES)("the text of %s", (name) => {
  it("has no line over 88 characters, and every direction says true or magnetic", async () => {
    const text = debriefText((await sampleDebrief(name)).document);
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(88);
    for (const [direction] of text.matchAll(/\b\d{3}°\S*( true)?/g))
      expect(direction).toMatch(/°[MT]| true$/);
  });

  it("has every angle in degrees with M, T, a side, a doubt sign, or as a limit", async () => {
    const text = debriefText((await sampleDebrief(name)).document).replace(/\s+/g, " ");
    for (const [angle] of text.matchAll(/\S+ \S+ \d{1,3}°( ?\S+ ?\S* ?\S* ?\S*)?/g))
      expect(angle).toMatch(
        /°[MT]|° true|left|right|±|to each side|within \d+°|toward the|away from the|on the course|intercept at \d+°|cut of|path of|path \d|line of|at most \d+°|off the first|’s tangent|ft\/NM, \d+°|at this ground speed/,
      );
  });
});

it.each(COURSE_SAMPLES)(
  "%s: the text gives the worst with its unit, its side and its doubt for each exercise",
  async (name) => {
    const text = debriefText((await sampleDebrief(name)).document).replace(/\s+/g, " ");
    expect(
      text.match(/Farthest \d\.\d\d NM (left|right) of course \(± (under )?\d\.\d\d NM\)/g),
    ).toHaveLength(4);
  },
);
