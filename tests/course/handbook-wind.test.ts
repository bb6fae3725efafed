import { describe, expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { courses, debriefOf, gpxText, type LoggedPoint } from "../support/debriefed.ts";
import { near, nearDirection } from "../support/near.ts";

const KT = 1852 / 3600;
const RAD = Math.PI / 180;

interface Triangle {
  readonly source: string;
  readonly course: number;
  readonly airspeed: number;
  readonly from: number;
  readonly speed: number;
  /** As published, right positive. */
  readonly correction: number;
  readonly heading: number;
  readonly groundSpeed: number;
}

const TRIANGLES: readonly Triangle[] = [
  {
    source: "PHAK FAA-H-8083-25, wind triangle (Fig. 15-21 in 25A); correction and heading from memory",
    ...{ course: 90, airspeed: 120, from: 45, speed: 40, correction: -14, heading: 76, groundSpeed: 88 },
  },
  {
    source: "ATPL question bank (atplquestions.com, general navigation 3)",
    ...{ course: 180, airspeed: 180, from: 100, speed: 18, correction: -6, heading: 174, groundSpeed: 176 },
  },
  {
    source: "PHAK sample flight Chickasha-Guthrie; correction from memory",
    ...{ course: 31, airspeed: 115, from: 360, speed: 10, correction: -3, heading: 28, groundSpeed: 106 },
  },
];

/** Air and nose make the path: a full turn and a quarter before the course, so that the log tells the wind; then the nose on a heading. */
function flownHeading(t: Triangle, heading: number, seconds: number): LoggedPoint[] {
  const headings: number[] = [];
  for (let k = 0; k < 120; k++) headings.push(heading + 3 * k);
  for (let k = 0; k < 60; k++) headings.push(heading - 90);
  for (let k = 1; k <= 30; k++) headings.push(heading - 90 + 3 * k);
  const turns = headings.length;
  for (let k = 0; k < seconds; k++) headings.push(heading);
  // backward first, so that the straight begins at the fix
  const velocity = (h: number) => ({
    east: (t.airspeed * Math.sin(h * RAD) - t.speed * Math.sin(t.from * RAD)) * KT,
    north: (t.airspeed * Math.cos(h * RAD) - t.speed * Math.cos(t.from * RAD)) * KT,
  });
  const FIX = { latitude: 35.6, longitude: 172.3 };
  const points: LoggedPoint[] = [];
  let place = FIX;
  for (let i = turns; i < headings.length; i++) {
    points.push({ ...place, seconds: i });
    const { east, north } = velocity(headings[i]!);
    place = destination(place, Math.atan2(east, north) / RAD, Math.hypot(east, north));
  }
  place = FIX;
  for (let i = turns - 1; i >= 0; i--) {
    const { east, north } = velocity(headings[i]!);
    place = destination(place, Math.atan2(-east, -north) / RAD, Math.hypot(east, north));
    points.unshift({ ...place, seconds: i });
  }
  return points;
}

async function factsOf(t: Triangle, heading: number) {
  const brief = `brief: 1
title: By construction
aircraft: { tas_kt: ${t.airspeed}, tas_doubt_kt: 5 }
fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 2.5 }
exercises:
  - { course: ${t.course}T, from: TARNO, scale: vor, between: ["01:03:30", "01:09:30"] }
`;
  const { document } = await debriefOf(gpxText(flownHeading(t, heading, 360)), brief);
  return courses(document)[0]!;
}

describe.each(TRIANGLES)("$source", (t) => {
  it("the published heading flown: correction flown and needed are the published one within 1.5°", async () => {
    const { facts, whatWouldHaveWorked } = await factsOf(t, t.heading);
    const { flownDeg, neededDeg, doubt95Deg } = facts.windCorrection!;
    near(flownDeg, t.correction, 1.5, "°", "flown");
    near(neededDeg, t.correction, 1.5, "°", "needed");
    expect(doubt95Deg).toBeGreaterThan(0);
    near(facts.groundSpeedKt!, t.groundSpeed, 1, "kt");
    nearDirection(whatWouldHaveWorked!.headingTrueDeg, t.heading, 1.5);
    near(facts.trackAngleError!.meanDeg, 0, 1, "°");
  });

  it("the course held as heading: the wind left uncorrected, drifting downwind", async () => {
    const { facts, findings, whatWouldHaveWorked } = await factsOf(t, t.course);
    near(facts.windCorrection!.flownDeg, 0, 1.5, "°", "flown");
    near(facts.windCorrection!.neededDeg, t.correction, 1.5, "°", "needed");
    nearDirection(whatWouldHaveWorked!.headingTrueDeg, t.heading, 1.5);
    expect(Math.sign(facts.drift!.meanDeg)).toBe(-Math.sign(t.correction));
    if (Math.abs(t.correction) > 3 && Math.abs(facts.trackAngleError!.meanDeg) < 10) {
      expect(findings.map((f) => f.code)).toContain("wind-uncorrected");
    }
  });
});
