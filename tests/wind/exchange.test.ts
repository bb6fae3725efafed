/** Height against speed in a turn: kinetic and potential energy, textbook mechanics. */
import { describe, expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { putBackExchange } from "../../src/wind/exchange.ts";
import { AIRSPEED, emptyFacts } from "../../src/wind/facts.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { near } from "../support/near.ts";

const G = 9.80665;
const KT = 1852 / 3600;
const FOOT = 0.3048;

/** Airspeed, kt, after a change of height, ft, at constant v^2 / 2 + g h. */
const exchanged = (airspeed: number, climbed: number) =>
  Math.sqrt((airspeed * KT) ** 2 - 2 * G * climbed * FOOT) / KT;

describe("height exchanged for speed", () => {
  const turn = (heights: readonly number[], airspeed: number) => {
    const facts = emptyFacts(heights.length);
    heights.forEach((height, i) => {
      facts.kind[i] = AIRSPEED;
      facts.seconds[i] = 5 * i;
      facts.east[i] = airspeed * Math.sin(i / 4);
      facts.north[i] = airspeed * Math.cos(i / 4);
      facts.altitude[i] = height;
    });
    facts.count = heights.length;
    putBackExchange(facts, 0);
    return facts;
  };

  it("200 ft lost in the middle of a turn at 190 kt are the speed that the energies say", () => {
    const { excess, noise } = turn([3000, 3000, 2800, 3000, 3000], 190);
    // the linear form and the receiver's height take a little from it
    near(excess[2]!, 190 - exchanged(190, -200), 0.5, "kt");
    expect(noise[2]).toBeGreaterThan(noise[1]!);
  });

  it("a steady climb is the engine's, and a receiver's few feet are nobody's", () => {
    expect(Math.max(...turn([3000, 3100, 3200, 3300, 3400], 190).excess.map(Math.abs))).toBeCloseTo(0, 9);
    expect(Math.max(...turn([3000, 3004, 2996, 3003, 3000], 100).excess.map(Math.abs))).toBeLessThan(0.05);
  });

  it("heights that are unknown change nothing", () => {
    const unknown = Number.NaN;
    expect([...turn([unknown, unknown, unknown, unknown], 100).excess]).toEqual([0, 0, 0, 0]);
  });
});

it("a level turn flown 250 ft low in its middle leaves the wind where it was", () => {
  const [windEast, windNorth, airspeed] = [24, -7, 190];
  const rows: number[][] = [];
  let [east, north, heading] = [0, 0, 30];
  const turning = 180 / 2.5;
  for (let t = 0; t <= 360 + turning; t += 0.5) {
    const inTurn = t >= 180 && t < 180 + turning;
    const climbed = inTurn ? -125 * (1 - Math.cos((2 * Math.PI * (t - 180)) / turning)) : 0;
    const speed = exchanged(airspeed, climbed);
    if (t % 1 === 0) rows.push([t, east, north, 3000 + climbed]);
    if (inTurn) heading += 2.5 * 0.5;
    east += (speed * Math.sin((heading * Math.PI) / 180) + windEast) * KT * 0.5;
    north += (speed * Math.cos((heading * Math.PI) / 180) + windNorth) * KT * 0.5;
  }
  const column = (f: (r: number[]) => number) => Float64Array.from(rows, f);
  const motion = smoothTrack({
    name: "exchange",
    kind: "simulated",
    length: rows.length,
    time: column((r) => Date.UTC(2026, 9, 17, 9) + r[0]! * 1000),
    // a plane at the equator: metres in a degree there by WGS84 (NGA.STND.0036)
    latitude: column((r) => r[2]! / 110_574.3),
    longitude: column((r) => 172 + r[1]! / 111_319.5),
    altitude: column((r) => r[3]!),
    segment: new Int32Array(rows.length),
    line: new Int32Array(rows.length),
  })!;
  const { alongFlight } = estimateWind(motion, findLegs(motion), { airspeed: null, winds: [] });
  const middle = motion.length >> 1;
  const off = Math.hypot(alongFlight.airEast[middle]! - windEast, alongFlight.airNorth[middle]! - windNorth);
  expect(off).toBeLessThan(2); // 14 kt where the exchange passes for wind
});
