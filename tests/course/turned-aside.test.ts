/** A course left by a turn aside at the end: the exercise ends there; where it may have been a drift, it cannot be told. */
import { expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { directionOf } from "../../src/quantity/angle.ts";
import { exerciseSentence, findingSentence } from "../../src/report/index.ts";
import { courses, debriefOf, gpxText, type LoggedPoint } from "../support/debriefed.ts";

const TARNO = { latitude: 35.6, longitude: 172.3 };
const BRIEF = `brief: 1
aircraft: { tas_kt: 100, tas_doubt_kt: 3 }
fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 0 }
exercises:
  - { course: 270T, from: TARNO }
`;
const RAD = Math.PI / 180;

/** At 100 kt through the air from TARNO, on headings each held for so many seconds, turns at 3° a second, in a wind from the south of so many knots. */
function flown(
  windKt: number,
  parts: readonly (readonly [heading: number, seconds: number])[],
): LoggedPoint[] {
  const points: LoggedPoint[] = [];
  let [place, heading, seconds] = [TARNO, parts[0]![0], 0];
  for (const [wanted, lasting] of parts) {
    for (let k = 0; k < lasting; k++) {
      points.push({ ...place, seconds: seconds++ });
      const turn = ((wanted - heading + 540) % 360) - 180;
      heading += Math.max(-3, Math.min(3, turn));
      const east = 100 * Math.sin(heading * RAD);
      const north = 100 * Math.cos(heading * RAD) + windKt;
      place = destination(place, directionOf(east, north), (Math.hypot(east, north) * 1852) / 3600);
    }
  }
  return points;
}

async function told(points: readonly LoggedPoint[]) {
  const standard = standardNamed("instrument-rating-us")!;
  const [course] = courses((await debriefOf(gpxText(points), BRIEF, { standard })).document);
  const verdict = course!.verdicts.find(({ criterion }) => criterion === "course-needle")!;
  const words = course!.findings.map((f) => findingSentence(f, course!)).join(" ");
  return { facts: course!.facts, verdict, words: `${exerciseSentence(course!)} ${words}` };
}
const endsAfter = (toUtc: string | null) => (Date.parse(toUtc!) - Date.UTC(2026, 9, 17, 1)) / 1000;

// 24° into 40 kt across holds the course at 100 kt: sin 23.6° is 0.4
const INTO = 270 - 23.58;

it("by construction: in 40 kt across, the 45° of a procedure turn ends the course, though the track turns less", async () => {
  // round to either side
  for (const round of [44, 46]) {
    const points = flown(40, [
      [INTO, 330],
      [225, 50],
      [round, 100],
      [66.4, 60],
    ]);
    const { facts, verdict, words } = await told(points);
    expect(Math.abs(endsAfter(facts.judged.toUtc) - 330)).toBeLessThan(6);
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.1);
    expect(verdict.verdict).toBe("met");
    expect(words).not.toMatch(/correction|did not come back/);
  }
});

it("by construction: a turn by 22° that never comes back is told, and cannot be told from a drift", async () => {
  const points = flown(0, [
    [270, 330],
    [248, 240],
    [90, 120],
  ]);
  const { facts, verdict, words } = await told(points);
  expect(Math.abs(endsAfter(facts.judged.toUtc) - 330)).toBeLessThan(6);
  expect(verdict).toMatchObject({ verdict: "cannot tell", reason: "turned-aside" });
  expect(words).toMatch(/At 01:05:3\d UTC the track turned to 22° left of the course and did not come back/);
});

it("by construction: the same turn that is corrected later is a fault, however bold the cut back", async () => {
  for (const back of [300, 335]) {
    const points = flown(0, [
      [270, 330],
      [248, 200],
      [back, 130],
      [270, 200],
    ]);
    const { facts, words } = await told(points);
    expect(facts.turnedAside, `${back}`).toBeUndefined();
    expect(words).not.toContain("did not come back");
  }
});

it("by construction: a correction that is let go, on the heading of the course, stays a fault", async () => {
  const points = flown(40, [
    [INTO, 330],
    [270, 240],
    [90, 150],
    [200, 100],
  ]);
  const { facts, words } = await told(points);
  expect(facts.turnedAside).toBeUndefined();
  expect(words).toMatch(/stood 2\d° right of the course/);
});
