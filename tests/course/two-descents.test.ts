/** Two heights wanted one after the other, flown by ruler in one descent: each has a beginning of its own. */
import { describe, expect, it } from "vitest";
import type { DescentRecord } from "../../src/debrief/document.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { destination } from "../../src/geodesy/index.ts";
import { readBrief } from "../../src/index.ts";
import { near } from "../support/near.ts";

const NM = 1852;
const START = Date.UTC(2026, 9, 17, 1, 0, 0);
/** ORBEN and, 8 NM after it on a track due east, TALLO. */
const ORBEN = { latitude: 35.6, longitude: 172.3 };
const TALLO = destination(ORBEN, 90, 8 * NM);

const BRIEF = readBrief(
  `brief: 1
title: Two restrictions
fixes:
  ORBEN: { lat: ${ORBEN.latitude}, lon: ${ORBEN.longitude}, kind: waypoint }
  TALLO: { lat: ${TALLO.latitude}, lon: ${TALLO.longitude}, kind: waypoint }
exercises:
  - { descent: ORBEN, to_ft: 4000 }
  - { descent: TALLO, to_ft: 2000 }
`,
  "b.yaml",
);

/** At 120 kt (2 NM a minute) east over both, 6,000 ft until 12 NM before TALLO (4 before ORBEN), by a rate of each minute after that. */
function flyBoth(rateAt: (minute: number, altitude: number) => number) {
  const points: { latitude: number; longitude: number }[] = [];
  const heights: number[] = [];
  let altitude = 6000;
  for (let t = 0; t <= 660; t++) {
    const along = t / 30 - 12; // NM from ORBEN
    points.push(destination(ORBEN, along < 0 ? 270 : 90, Math.abs(along) * NM));
    heights.push(altitude);
    const minute = (t - 240) / 60;
    if (minute >= 0) altitude -= rateAt(minute, altitude) / 60;
  }
  const n = points.length;
  const track = {
    name: "by ruler",
    kind: "simulated" as const,
    length: n,
    time: Float64Array.from(points, (_, i) => START + i * 1000),
    latitude: Float64Array.from(points, (p) => p.latitude),
    longitude: Float64Array.from(points, (p) => p.longitude),
    altitude: Float64Array.from(heights),
    segment: new Int32Array(n),
    line: new Int32Array(n),
  };
  const log = { name: "by ruler", file: "b.gpx", kind: "gpx", track, waypoints: [], routes: [], issues: [] };
  const { document } = debriefFlight({
    log: { ...log, pointsSeen: n, dropped: {} } as unknown as Parameters<typeof debriefFlight>[0]["log"],
    brief: BRIEF,
  });
  return document.exercises as DescentRecord[];
}

describe("two descents flown as one", () => {
  it("at 500 ft/min all along, the second begins over the first fix, 8 NM before its own, at the height there", () => {
    // begun 4 NM before ORBEN: 1,000 ft lost in 2 minutes, so 5,000 ft over it and 3,000 ft over TALLO
    const [first, second] = flyBoth(() => 500);
    near(first!.facts!.began!.toGoNm, 4, 0.2, "NM");
    near(second!.facts!.began!.toGoNm, 8, 0.1, "NM");
    near(second!.facts!.began!.altitudeFt, 5000, 40, "ft");
    near(second!.facts!.began!.neededDownFpm!, (3000 / 8) * 2, 20, "ft/min");
    near(second!.facts!.flown!.meanDownFpm!, 500, 15, "ft/min");
    expect(second!.facts!.began!.afterEarlier).toBe(true);
    // begun in time it could not have been: 750 ft/min were needed, and 500 flown
    expect(second!.findings.map(({ code }) => code)).toEqual(["descent-crossed-high", "descent-too-shallow"]);
    expect(Date.parse(second!.startUtc!)).toBeGreaterThan(Date.parse(first!.startUtc!) + 60_000);
  });

  it("level for a minute at 4,000 ft from ORBEN on, the second begins where that ended, 6 NM before its own", () => {
    // 1,000 ft/min to ORBEN
    const [first, second] = flyBoth((minute, altitude) =>
      minute < 2 ? 1000 : minute < 3 ? 0 : altitude > 2000 ? 1000 : 0,
    );
    near(first!.facts!.began!.toGoNm, 4, 0.2, "NM");
    near(first!.facts!.crossing!.altitudeFt, 4000, 40, "ft");
    near(second!.facts!.began!.toGoNm, 6, 0.2, "NM");
    near(second!.facts!.began!.altitudeFt, 4000, 40, "ft");
    expect(second!.facts!.began!.afterEarlier).toBeUndefined();
  });
});
