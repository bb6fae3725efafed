import { describe, expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { debriefText, exerciseSentence, findingSentence } from "../../src/report/index.ts";
import { courses, debriefOf, gpxText, type LoggedPoint } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const TARNO = { latitude: 35.6, longitude: 172.3 };
/** Declination of the station in the brief, east. */
const EAST = 2.5;
/** Metres a second at 100 kt. */
const SPEED = (100 * 1852) / 3600;

/** A flight over the ground on magnetic tracks, each for so many seconds; turns at 3 degrees a second. */
function flownOn(
  begin: { readonly latitude: number; readonly longitude: number },
  parts: readonly (readonly [trackMagnetic: number, seconds: number])[],
): LoggedPoint[] {
  const points: LoggedPoint[] = [];
  let place = begin;
  let track = parts[0]![0];
  let seconds = 0;
  for (const [wanted, lasting] of parts) {
    for (let k = 0; k < lasting; k++) {
      points.push({ ...place, seconds: seconds++ });
      track += Math.max(-3, Math.min(3, wanted - track));
      place = destination(place, track + EAST, SPEED);
    }
  }
  return points;
}

const brief = (exercise: string) => `brief: 1
title: By construction
fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: ${EAST} }
exercises:
  - { ${exercise}, scale: vor }
`;

async function told(exercise: string, points: readonly LoggedPoint[]) {
  const { document } = await debriefOf(gpxText(points), brief(exercise));
  const only = courses(document)[0]!;
  return { exercise: only, facts: only.facts, sentence: exerciseSentence(only) };
}

/** On the radial inbound, so many miles out. */
const inbound = (course: number, nm: number) => destination(TARNO, course + 180 + EAST, nm * 1852);

describe("common practice, no source: said from the track, on a log cut off before a quarter scale", () => {
  it("inbound 241 with track 246: drifts right", async () => {
    const { facts, sentence } = await told(
      "course: 241, to: TARNO",
      flownOn(inbound(241, 15), [
        [241, 90],
        [246, 100],
      ]),
    );
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.25);
    expect(sentence).toContain("the track, 246°M, stood 5° right of the course, 241°M");
    expect(sentence).toContain("The needle never reached a quarter; no correction followed");
    expect(facts.crossTrack.maxNm).toBeGreaterThan(0);
  });

  it("course 270 from the fix with track 258: drifts left", async () => {
    const out = destination(TARNO, 270 + EAST, 2 * 1852);
    const { facts, sentence } = await told(
      "course: 270, from: TARNO",
      flownOn(out, [
        [270, 200],
        [258, 50],
      ]),
    );
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.25);
    expect(sentence).toContain("the track, 258°M, stood 12° left of the course, 270°M");
    expect(sentence).toContain("The needle never reached a quarter");
    expect(facts.crossTrack.maxNm).toBeLessThan(0);
  });

  it("the same flown in the mirror: 241 with track 236 drifts left", async () => {
    const { sentence } = await told(
      "course: 241, to: TARNO",
      flownOn(inbound(241, 15), [
        [241, 90],
        [236, 100],
      ]),
    );
    expect(sentence).toContain("236°M, stood 5° left of the course, 241°M");
  });

  it("5 degrees back is a small correction, and is told with its time", async () => {
    const { exercise, facts } = await told(
      "course: 241, to: TARNO",
      flownOn(inbound(241, 15), [
        [241, 90],
        [246, 120],
        [241, 90],
      ]),
    );
    const excursion = facts.excursions[0]!;
    near((Date.parse(excursion.correctedUtc!) - Date.UTC(2026, 9, 17, 1)) / 1000, 210, 3, "s");
    const drift = exercise.findings.find((f) => f.code === "drifted-before-needle")!;
    expect(findingSentence(drift, exercise)).toMatch(/the first correction came after 1\d\d seconds|2 min/);
  });
});

describe("common practice, no source: 1 in 60, within its validity of about 20° (stevehardie.com, jenxs.co.uk)", () => {
  it.each([5, 10, 15])(
    "a track %s° off carries that many sixtieths of the way gone, within a twentieth",
    async (off) => {
      // a minute on course, then the track off for 180 s: 5 NM gone at 100 kt
      const { facts } = await told(
        "course: 241, to: TARNO",
        flownOn(inbound(241, 16), [
          [241, 60],
          [241 + off, 180],
        ]),
      );
      const excursion = facts.excursions[0]!;
      near(excursion.trackErrorDeg, off, 0.3, "°");
      // the turn of off / 3 seconds carries half of its time out
      const gone = (180 - off / 6) * (100 / 3600);
      near(facts.crossTrack.maxNm, (off * gone) / 60, 0.05 * ((off * gone) / 60), "NM");
    },
  );
});

describe("common practice, no source: a chase is its own cause", () => {
  const swings = Array.from({ length: 12 }, (_, k) => [241 + (k % 2 ? -14 : 14), 25] as const);
  // met at 40 degrees and turned onto it early, to the right of it
  const begin = destination(inbound(241, 20), 241 + 90 + EAST, 2.5 * 1852);
  const joined = [
    [201, 80],
    [241, 30],
  ] as const;
  const text = async (parts: readonly (readonly [number, number])[]) =>
    debriefText(
      (await debriefOf(gpxText(flownOn(begin, parts)), brief("course: 241, to: TARNO"))).document,
    ).replace(/\s+/g, " ");

  it("the turn onto the course is not why the needle was chased after it", async () => {
    const chased = await text([...joined, ...swings, [241, 30]]);
    expect(chased).toContain("the needle was chased");
    expect(chased).not.toContain("Why.");
  });
});

describe("a log without times", () => {
  it("keeps the geometry; shares are of the distance; each time fact is untold with its reason", async () => {
    const points = flownOn(inbound(241, 14), [[241, 300]]).map((p) => ({ ...p, seconds: null }));
    const { exercise, facts, sentence } = await told("course: 241, to: TARNO", points);
    // a held direction is no geodesic: 0.215° of longitude converge by 0.125°, 0.015 NM at mid-way of 14 NM
    near(facts.crossTrack.maxNm, 0, 0.02, "NM");
    expect(facts.judged.shareOf).toBe("distance");
    for (const fact of ["trackAngleError", "wind", "drift", "windCorrection", "excursions"])
      expect(facts.cannotTell).toContainEqual({ fact, reason: "no-times" });
    expect(exercise.startUtc).toBeNull();
    expect(sentence).not.toMatch(/NaN|null|undefined/);
  });
});
