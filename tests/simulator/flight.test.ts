/** The true flight, against handbook turns, wind triangles and atmosphere. */
import geographiclib from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { turnFrom } from "../../src/quantity/angle.ts";
import { densityRatio } from "../../src/simulator/air.ts";
import { crossCountry, fly, SCENARIOS, type TrueColumns } from "../../src/simulator/index.ts";
import { LINDHOLT_ELEVATION } from "../../src/simulator/orsa-vale.ts";
import type { Scenario } from "../../src/simulator/scenario.ts";
import type { Step } from "../../src/simulator/script.ts";
import { near, nearDirection } from "../support/near.ts";
import { blowing, flyingAt, STILL } from "./still.ts";

const wgs84 = geographiclib.Geodesic.WGS84;
const flown = (change: Partial<Scenario>) => fly({ ...STILL, ...change }, 1);

/** Distance (metres) and azimuth between two rows. */
function between(c: TrueColumns, i: number, j: number) {
  const r = wgs84.Inverse(c.latitude[i]!, c.longitude[i]!, c.latitude[j]!, c.longitude[j]!);
  return { metres: r.s12!, azimuth: (r.azi1! + 360) % 360 };
}
const knots = (metres: number, seconds: number) => (metres / seconds) * (3600 / 1852);

describe("standard-rate turns in still air", () => {
  // 1 % against handbook numbers, which round; the diameter is taken across the turn, away from roll-in and roll-out.
  it.each([
    { speed: 100, radiusFeet: 3223, source: "Navy training text as quoted: 100 kt, 3,223 ft" },
    { speed: 90, radiusFeet: 0.4775 * 6076.12, source: "rule r = V / (60 pi) NM, 90 kt" },
    { speed: 120, radiusFeet: 0.6366 * 6076.12, source: "rule r = V / (60 pi) NM, 120 kt" },
  ])("radius at $speed kt within 1 % of the handbook ($source)", ({ speed, radiusFeet }) => {
    const { columns } = flown({ airspeed: flyingAt(speed), script: [{ do: "turn", by: 540 }] });
    near(between(columns, 60, 120).metres / 2 / 0.3048, radiusFeet, 0.01 * radiusFeet, "ft");
  });

  it("takes two minutes for a full circle (rate one by definition)", () => {
    const { columns } = flown({ script: [{ do: "turn", by: 540 }] });
    const back = columns.heading.findIndex((h, i) => i > 100 && Math.abs(h - columns.heading[20]!) < 1.6);
    near(back - 20, 120, 1, "s");
  });

  it("turns left when told to turn left", () => {
    const left: Step = { do: "heading", heading: 180, seconds: 30, turn: "left" };
    const { columns } = flown({ script: [left] });
    expect(columns.heading[20]).toBeLessThan(90);
    nearDirection(columns.heading.at(-1)!, 180, 3);
  });
});

describe("wind triangles", () => {
  const straight = (heading: number): readonly Step[] => [{ do: "heading", heading, seconds: 120 }];
  const measure = (change: Partial<Scenario>) => {
    const { columns } = flown(change);
    const last = columns.length - 1;
    const { metres, azimuth } = between(columns, last - 60, last);
    return { speed: knots(metres, 60), track: azimuth, heading: columns.heading[last]! };
  };

  it.each([
    {
      source: "question bank for the ATPL, General Navigation",
      ...{ heading: 254, tas: 163, from: 130, wind: 30, track: 262, speed: 182 },
    },
    {
      source: "War Dept, Mathematics for Air Crew Trainees, p. 73 ex. 2",
      ...{ heading: 315, tas: 150, from: 45, wind: 30, track: 304, speed: 153 },
    },
    {
      source: "Horton's flight-test article, heading north",
      ...{ heading: 0, tas: 100, from: 270, wind: 20, track: 11.3, speed: 102 },
    },
    {
      source: "Horton's flight-test article, heading west",
      ...{ heading: 270, tas: 100, from: 270, wind: 20, track: 270, speed: 80 },
    },
  ])("a heading held gives the track and ground speed printed in: $source", (c) => {
    const m = measure({
      wind: blowing(c.from, c.wind),
      airspeed: flyingAt(c.tas),
      script: straight(c.heading),
    });
    near(m.speed, c.speed, 1, "kt"); // sources print whole knots and degrees
    nearDirection(m.track, c.track, 0.6);
  });

  it.each([
    {
      source: "FAA-H-8083-25, wind triangle",
      ...{ course: 90, tas: 120, from: 45, wind: 40, speed: 88, heading: 76 },
    },
    {
      source: "FAA-H-8083-25, sample flight (answers from memory)",
      ...{ course: 31, tas: 115, from: 0, wind: 10, speed: 106, heading: 28 },
    },
    {
      source: "question bank for the ATPL",
      ...{ course: 180, tas: 180, from: 100, wind: 18, speed: 176, heading: 174 },
    },
  ])("a tidily flown course needs the heading and gives the ground speed printed in: $source", (c) => {
    const m = measure({
      wind: blowing(c.from, c.wind),
      airspeed: flyingAt(c.tas),
      start: { ...STILL.start, heading: c.course },
      script: [
        {
          do: "course",
          form: "from",
          fix: STILL.start.position,
          course: c.course,
          until: 15,
          cut: 30,
          scale: "rnav-1",
          flown: { habit: "tidy", share: 1, delay: 0 },
          exercise: "course",
        },
      ],
    });
    near(m.speed, c.speed, 1, "kt");
    nearDirection(m.heading, c.heading, 1);
    nearDirection(m.track, c.course, 0.6);
  });
});

describe("U.S. Standard Atmosphere 1976, table of density ratios (from memory)", () => {
  it.each([
    [0, 1],
    [5000, 0.8617],
    [10_000, 0.7385],
    [20_000, 0.5328],
  ])("at %d ft", (feet, ratio) => near(densityRatio(feet), ratio, 0.0001));

  it("makes a held indicated airspeed grow by about 2 % per thousand feet, common practice", () => {
    const climb: Step[] = [
      { do: "height", altitude: 9000, rate: 1000 },
      { do: "heading", heading: 90, seconds: 600 },
    ];
    const { columns } = flown({ script: climb, airspeed: { ...STILL.airspeed, heldIndicated: true } });
    const thousands = (columns.altitude.at(-1)! - columns.altitude[0]!) / 1000;
    near(thousands, 5, 0.1);
    const growth = (100 * (columns.trueAirspeed.at(-1)! / columns.trueAirspeed[0]! - 1)) / thousands;
    near(growth, 2, 0.5, "% per 1,000 ft");
  });
});

describe("by construction: the truth is consistent with itself", () => {
  it.each(Object.keys(SCENARIOS))("%s: positions move by wind and air velocity, every second", (name) => {
    const { columns: c } = fly(SCENARIOS[name]!, 3);
    expect(c.length).toBeGreaterThan(60);
    const radian = Math.PI / 180;
    let worst = 0;
    for (let i = 1; i < c.length; i++) {
      if (c.altitude[i] === LINDHOLT_ELEVATION) continue; // on its wheels the nose does not point through the air
      const { metres, azimuth } = between(c, i - 1, i);
      // ground less air velocity, against the mean wind of the two seconds; the chord of a turn is 0.01 % short
      const mean = (of: (k: number) => number) => (of(i - 1) + of(i)) / 2;
      const east = mean((k) => c.airEast[k]! + c.trueAirspeed[k]! * Math.sin(c.heading[k]! * radian));
      const north = mean((k) => c.airNorth[k]! + c.trueAirspeed[k]! * Math.cos(c.heading[k]! * radian));
      const missEast = knots(metres, 1) * Math.sin(azimuth * radian) - east;
      const missNorth = knots(metres, 1) * Math.cos(azimuth * radian) - north;
      worst = Math.max(worst, Math.hypot(missEast, missNorth));
    }
    // the mean of two seconds stands for noise between them: airspeed wander and gusts, sd 0.3 kt in half a second
    expect(worst).toBeLessThan(SCENARIOS[name]!.wind.gusts ? 2 : 1);
  });

  it("gives the same flight for a seed, another for another", () => {
    const scenario = SCENARIOS["needle-chased"]!;
    const frozen = Object.freeze({ ...scenario });
    const [a, b, c] = [fly(frozen, 5), fly(frozen, 5), fly(frozen, 6)];
    expect(a).toEqual(b);
    expect(a.track.latitude).not.toEqual(c.track.latitude);
  });

  it("flies the same true flight whatever the receiver logs", () => {
    const scenario = SCENARIOS["calm-and-tidy"]!;
    const coarse = fly({ ...scenario, logging: { every: 5 } }, 2);
    expect(coarse.columns).toEqual(fly(scenario, 2).columns);
  });

  it("refuses a script that does not end", () => {
    const away: Step = { do: "heading", heading: 90, seconds: Number.POSITIVE_INFINITY };
    expect(() => flown({ script: [away] })).toThrow('invalid script: step "heading" does not end');
  });
});

describe("by construction: what a script draws", () => {
  it("a cross-country changes its heading by what is drawn from 30 to 90 degrees, anew for each seed", () => {
    const changes = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => {
      const calm: Partial<Scenario> = { pilot: STILL.pilot };
      const { columns } = fly({ ...SCENARIOS["cross-country"]!, ...calm }, seed);
      return turnFrom(columns.heading[290]!, columns.heading.at(-1)!); // two changes to the right, one to the left
    });
    expect(new Set(changes.map(Math.round)).size).toBeGreaterThan(5);
    for (const change of changes) {
      expect(change).toBeGreaterThan(-32);
      expect(change).toBeLessThan(152);
    }
  });

  it("three changes of 40, -30 and 90 degrees end 100 degrees to the right", () => {
    const { columns } = flown({ script: crossCountry(90, [40, -30, 90], 120) });
    nearDirection(columns.heading.at(-1)!, 190, 10); // each turn is rolled out within 3 degrees
    near(columns.length, 4 * 120 + 160 / 3, 25, "s");
  });
});
