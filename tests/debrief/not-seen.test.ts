/** Logs that break off, begin late or lose their points, against a sample of which all is known: what is missing is not called not flown. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { debriefText } from "../../src/report/index.ts";
import { debriefOf, gpxText } from "../support/debriefed.ts";

const SAMPLE = join(import.meta.dirname, "../../samples/calm-and-tidy");
const gpx = readFileSync(join(SAMPLE, "log.gpx"), "utf8");
const brief = readFileSync(join(SAMPLE, "brief.yaml"), "utf8");
const POINT = /<trkpt[\s\S]*?<\/trkpt>/g;
const points = gpx.match(POINT)!;

const only = (wanted: (row: number) => boolean) => {
  let row = 0;
  return gpx.replace(POINT, (point) => (wanted(row++) ? point : ""));
};

async function told(log: string, briefed = brief) {
  const { document } = await debriefOf(log, briefed);
  return {
    verdicts: document.exercises.map((e) => ({
      flown: e.facts !== null,
      said: new Set(e.verdicts.map((v) => `${v.verdict}, ${v.reason}`)),
    })),
    text: debriefText(document).replace(/\s+/g, " "),
  };
}

describe("an exercise that the log does not show", () => {
  it("after the file breaks off in flight: cannot tell, and where the log ends", async () => {
    const { verdicts, text } = await told(gpx.slice(0, gpx.indexOf(points[1238]!) + 40));
    expect(verdicts.map((v) => v.flown)).toEqual([true, true, false, false]);
    for (const { said } of verdicts.slice(2)) expect([...said]).toEqual(["cannot tell, log-ends"]);
    expect(text).toContain("Whether it was flown cannot be told: the log ends at 01:32 UTC, in flight.");
  });

  it("before the log begins in flight: cannot tell, and where the log begins", async () => {
    const { verdicts, text } = await told(only((row) => row > 1300));
    expect(verdicts.map((v) => v.flown)).toEqual([false, false, true, true]);
    for (const { said } of verdicts.slice(0, 2)) expect([...said]).toEqual(["cannot tell, log-begins"]);
    expect(text).toMatch(/Whether it was flown cannot be told: the log begins at 01:3\d UTC, in flight\./);
  });

  it("where times jump back and half of the points is left out: cannot tell, and how many", async () => {
    const jumped = [...points.slice(0, 1201), ...points.slice(0, 1152)].join("\n");
    const { verdicts, text } = await told(gpx.replace(/<trkpt[\s\S]*<\/trkpt>/, jumped));
    for (const { said } of verdicts.slice(2)) expect([...said]).toEqual(["cannot tell, points-left-out"]);
    expect(text).toMatch(/1,15\d of the 2,353 points of the log could not be used/);
  });

  it("between two that were flown: not flown", async () => {
    const extra = brief.replace(/( {2}- \{ leg: .*\n)/, "$1  - { course: 120, from: KESTI, scale: vor }\n");
    const { verdicts } = await told(gpx, extra);
    expect([...verdicts[3]!.said]).toEqual(["not flown, null"]);
  });

  it("of another flight's brief: not flown, wherever the log ends", async () => {
    const { verdicts } = await told(gpx, brief.replaceAll("lat: 35.", "lat: 45."));
    for (const { said } of verdicts) expect([...said]).toEqual(["not flown, null"]);
  });
});

describe("a straight that climbs 500 ft a minute for ten minutes", () => {
  const north = Array.from({ length: 600 }, (_, i) => ({
    latitude: 35.6 + (i * 100) / 3600 / 60,
    longitude: 172.3,
    seconds: i,
  }));
  let row = 0;
  const log = gpxText(north).replace(
    /<ele>1200<\/ele>/g,
    () => `<ele>${(600 + (row++ * 500 * 0.3048) / 60).toFixed(2)}</ele>`,
  );
  const leg = (altitude: string) => `brief: 1
title: By construction
standard: instrument-rating-us
fixes:
  FIRST: { lat: 35.6, lon: 172.3, kind: waypoint }
  LAST: { lat: 35.87, lon: 172.3, kind: waypoint }
exercises:
  - { leg: [FIRST, LAST], scale: rnav-1${altitude} }
`;
  const steady = async (altitude: string) => {
    const { document } = await debriefOf(log, leg(altitude));
    const [exercise] = document.exercises;
    return exercise!.verdicts.find((v) => v.criterion === "course-height-steady")!;
  };

  it("is not judged for its height where the brief gives none", async () => {
    expect(await steady("")).toMatchObject({ verdict: "cannot tell", reason: "climb-without-height" });
  });

  it("did not hold the height that the brief gives", async () => {
    expect(await steady(", altitude_ft: 4000")).toMatchObject({ verdict: "not met" });
  });
});
