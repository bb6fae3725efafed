import { describe, expect, it } from "vitest";
import { variationAt } from "../../src/geodesy/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind, measuredAir, type WindPriors, windOver, windRecord } from "../../src/wind/index.ts";
import { windSchema } from "../../src/wind/record.ts";
import { type FlownOptions, fly } from "../support/flown.ts";
import { near, nearDirection } from "../support/near.ts";

const SAID = { trueAirspeed: 105, doubt: 3.2 };
const NOTHING: WindPriors = { airspeed: null, winds: [] };
const WEST = { from: 270, speed: 20 };
const estimate = (track: Track, priors = NOTHING) => {
  const motion = smoothTrack(track)!;
  const legs = findLegs(motion);
  return { motion, legs, wind: estimateWind(motion, legs, priors) };
};
const flight = (options: Partial<FlownOptions> = {}) =>
  fly({
    seed: 5,
    wind: WEST,
    shear: 0,
    steps: [{ straight: 150 }, { turn: 360 }, { straight: 150 }],
    ...options,
  });

describe("by construction: a full turn in wind 270/20", () => {
  const { wind, motion } = estimate(flight().track);
  it("knows direction and speed, and that they rest on a turn", () => {
    expect(wind.day.knowledge).toBe("full");
    expect(wind.day.restsOn).toBe("turns");
    // four times the bound of a single 360, 1.12 kt
    near(Math.hypot(wind.alongFlight.airEast[200]! - 20, wind.alongFlight.airNorth[200]!), 0, 4.5, "kt");
    near(wind.day.trueAirspeed!, 105, 5, "kt");
  });
  it("has a heading less the drift on the straights", () => {
    const first = windOver(wind, motion, { start: 20, end: 120 });
    expect(first.across! * Math.sign(motion.velocityNorth[60]!)).toBeGreaterThan(0); // north-bound, blown to the right
    // the nose points north: asin(20/105) is 11 degrees left of the track
    nearDirection(wind.alongFlight.heading[60]!, 0, 4);
    nearDirection(motion.trackAngle[60]!, 11, 4);
  });
  it("writes records of the document's form", () => {
    for (const fact of [wind.day, ...wind.legs]) windSchema.parse(windRecord(fact));
  });
});

describe("common practice, no source: a single straight tells at most the wind along it", () => {
  const straight = flight({ steps: [{ straight: 1500 }] }).track;
  it("claims nothing without an airspeed", () => {
    const { wind } = estimate(straight);
    expect(wind.alongFlight.knowledge.every((k) => k === "none")).toBe(true);
    expect(wind.legs[0]).toMatchObject({
      knowledge: "none",
      from: null,
      speed: null,
      along: null,
      restsOn: "nothing",
    });
    expect(windRecord(wind.day)).toMatchObject({ fromTrueDeg: null, ellipse95Kt: null });
  });
  it("claims the along-track part alone with one, within its doubt", () => {
    const { wind } = estimate(straight, { airspeed: { trueAirspeed: 105, doubt: 5 }, winds: [] });
    const leg = wind.legs[0]!;
    expect(leg).toMatchObject({
      knowledge: "along",
      from: null,
      speed: null,
      across: null,
      restsOn: "prior",
    });
    near(leg.along!, 0, leg.along95!, "kt");
    expect(leg.along95!).toBeGreaterThan(1.96 * 3.5);
    expect(wind.priorsUsed).toHaveLength(1);
    expect(wind.alongFlight.heading.every((h) => Number.isNaN(h))).toBe(true);
  });
  it("never claims a direction, on 20 straights with and without an airspeed", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { track } = fly({ seed, heading: 18 * seed, steps: [{ straight: 900 }] });
      for (const airspeed of [null, { trueAirspeed: 105, doubt: 5 }]) {
        const { wind } = estimate(track, { airspeed, winds: [] });
        expect(wind.alongFlight.knowledge.includes("full")).toBe(false);
      }
    }
  });
});

describe("a stated wind", () => {
  it("is named, and rests on the prior where the log alone would not know", () => {
    const winds = [{ ...WEST, doubt: 2, altitude: 3000, source: "forecast" }];
    const { wind } = estimate(flight({ steps: [{ straight: 900 }] }).track, { airspeed: null, winds });
    expect(wind.priorsUsed).toEqual(["forecast"]);
    expect(wind.legs[0]).toMatchObject({ knowledge: "full", restsOn: "prior" });
    near(wind.legs[0]!.speed!, 20, 6, "kt");
  });
  it("does not bend what turns tell by more than its doubt allows", () => {
    const winds = [{ from: 90, speed: 20, doubt: 20, altitude: null, source: "guess" }];
    const { track } = flight();
    const bent = estimate(track, { airspeed: null, winds }).wind.alongFlight;
    const free = estimate(track).wind.alongFlight;
    // two estimates weigh as one over their variances; doubled, since the problem is not quite linear
    const apart = free.airEast[200]! + 20;
    near(bent.airEast[200]!, free.airEast[200]!, (2 * apart * free.varianceEast[200]!) / 20 ** 2, "kt");
  });
});

describe("invariances", () => {
  const { track } = flight({ seed: 8, rounded: false });
  const base = estimate(track).wind.alongFlight;
  it("mirrors with the flight", () => {
    const mirrored = { ...track, longitude: track.longitude.map((l) => 2 * 172.3 - l) };
    const { alongFlight } = estimate(mirrored).wind;
    for (const k of [50, 200, 350]) {
      near(alongFlight.airEast[k]!, -base.airEast[k]!, 0.01, "kt");
      near(alongFlight.airNorth[k]!, base.airNorth[k]!, 0.01, "kt");
    }
  });
  it("moves across the antimeridian with the flight", () => {
    const moved = { ...track, longitude: track.longitude.map((l) => ((l + 7.72 + 180) % 360) - 180) };
    const { alongFlight } = estimate(moved).wind;
    for (const k of [50, 200, 350]) near(alongFlight.airEast[k]!, base.airEast[k]!, 0.01, "kt");
  });
  it("turns with the flight (at the equator, where a turned place is a turned flight)", () => {
    const equator = flight({ seed: 8, rounded: false, start: { latitude: 0, longitude: 10 } }).track;
    const turned = {
      ...equator,
      // east becomes north: 110,574 m to a degree of latitude, 111,320 m of longitude at the equator of WGS84
      latitude: equator.longitude.map((l) => ((l - 10) * 111319.49) / 110574.28),
      longitude: equator.latitude.map((l) => 10 - (l * 110574.28) / 111319.49),
    };
    const a = estimate(equator).wind.alongFlight;
    const b = estimate(turned).wind.alongFlight;
    for (const k of [50, 200, 350]) {
      near(b.airNorth[k]!, a.airEast[k]!, 0.05, "kt");
      near(b.airEast[k]!, -a.airNorth[k]!, 0.05, "kt");
    }
  });
  it("changes little when the log is thinned from 1 s to 2 s", () => {
    const keep = (_: number, i: number) => i % 2 === 0;
    const thin = {
      ...track,
      length: Math.ceil(track.length / 2),
      time: track.time.filter(keep),
      latitude: track.latitude.filter(keep),
      longitude: track.longitude.filter(keep),
      altitude: track.altitude.filter(keep),
      segment: track.segment.filter(keep),
      line: track.line.filter(keep),
    };
    const { alongFlight } = estimate(thin).wind;
    near(alongFlight.airEast[100]!, base.airEast[200]!, 1, "kt");
    near(alongFlight.airNorth[100]!, base.airNorth[200]!, 1, "kt");
  });
});

describe("what is not a flight", () => {
  it("knows nothing of two points, of an aircraft that stands, of heights left out", () => {
    const { track } = flight();
    const cut = (n: number): Track => ({
      ...track,
      length: n,
      time: track.time.slice(0, n),
      latitude: track.latitude.slice(0, n),
      longitude: track.longitude.slice(0, n),
    });
    expect(estimate(cut(2)).wind.day.knowledge).toBe("none");
    const still = {
      ...track,
      latitude: track.latitude.map(() => 35),
      longitude: track.longitude.map(() => 170),
    };
    expect(estimate(still).wind.day.knowledge).toBe("none");
    const flat = { ...track, altitude: track.altitude.map(() => Number.NaN) };
    const { wind } = estimate(flat);
    expect(wind.day).toMatchObject({ knowledge: "full", altitude: null });
    expect(wind.alongFlight.airEast.some((v) => Number.isNaN(v))).toBe(false);
  });
  it("refuses a span outside the motion", () => {
    const { wind, motion } = estimate(flight().track);
    expect(() => windOver(wind, motion, { start: 0, end: motion.length + 1 })).toThrow(RangeError);
  });
  it("says nothing of the ground run", () => {
    const steps = [{ straight: 200 }, { turn: 360 }, { straight: 100 }];
    const { track } = flight({ steps });
    // 60 s of standing before the flight
    const before = 60;
    const hold = (c: Float64Array) => Float64Array.from([...new Array<number>(before).fill(c[0]!), ...c]);
    const parked = {
      ...track,
      length: track.length + before,
      time: Float64Array.from(
        { length: track.length + before },
        (_, i) => track.time[0]! + (i - before) * 1000,
      ),
      latitude: hold(track.latitude),
      longitude: hold(track.longitude),
      altitude: hold(track.altitude),
      segment: new Int32Array(track.length + before),
      line: new Int32Array(track.length + before),
    };
    const { wind } = estimate(parked);
    expect(wind.alongFlight.knowledge[30]).toBe("none");
    expect(Number.isNaN(wind.alongFlight.airEast[30]!)).toBe(true);
    expect(wind.day.knowledge).toBe("full");
  });
});

describe("by construction: a log that recorded airspeed and heading", () => {
  const flown = flight({ steps: [{ straight: 900 }], heading: 30 });
  const track = { ...flown.track, trueAirspeed: flown.truth.trueAirspeed, headingTrue: flown.truth.heading };
  const motion = smoothTrack(track)!;
  const legs = findLegs(motion);
  const measured = measuredAir(track, motion);
  const wind = estimateWind(motion, legs, { airspeed: null, winds: [], measured });
  it("knows the wind of a single straight, and says that it was measured", () => {
    expect(wind.legs[0]).toMatchObject({ knowledge: "full", restsOn: "measured" });
    // the instruments' own doubt: 2.5 kt and 1.5 degrees at 105 kt
    near(wind.alongFlight.airEast[450]!, flown.truth.airEast[450]!, 2, "kt");
    near(wind.alongFlight.airNorth[450]!, flown.truth.airNorth[450]!, 2, "kt");
    expect(Math.sqrt(wind.alongFlight.varianceEast[450]!)).toBeGreaterThan(1);
    expect(wind.priorsUsed).toEqual([]);
  });
  it("turns magnetic headings and indicated airspeeds into true ones", () => {
    // 3,000 ft: density ratio 0.9151, U.S. Standard Atmosphere 1976; variation by the model, tested in geodesy
    const plain = {
      ...flown.track,
      indicatedAirspeed: flown.truth.trueAirspeed.map((v) => v * Math.sqrt(0.9151)),
      headingMagnetic: flown.truth.heading.map(
        (h) => h - variationAt({ latitude: 35.6, longitude: 172.3 }, motion.time[0]!)!.degrees,
      ),
    };
    const read = measuredAir(plain, motion)!;
    near(read.trueAirspeed[450]!, flown.truth.trueAirspeed[450]!, 0.15, "kt");
    nearDirection(read.heading[450]!, flown.truth.heading[450]!, 0.01);
    expect(measuredAir(flown.track, motion)).toBeNull();
  });
});

describe("one truth: a span's wind is known in full no sooner than that of its rows", () => {
  // two courses 30 to 90 degrees apart with a stated airspeed: near the limit of what is said
  const turns = [30, 45, 60, 90];
  const flights = turns.flatMap((turn) =>
    [1, 2].map((seed) => {
      const steps = [{ straight: 300 }, { turn }, { straight: 300 }];
      return { seed, turn, ...estimate(flight({ seed, steps }).track, { airspeed: SAID, winds: [] }) };
    }),
  );

  it("by a stated airspeed alone: with most of its headings not known, a leg has no wind across", () => {
    for (const { wind, legs, seed, turn } of flights)
      legs.forEach(({ span }, k) => {
        const { knowledge } = wind.legs[k]!;
        const rows = wind.alongFlight.knowledge.slice(span.start, span.end);
        const full = rows.filter((known) => known === "full").length / rows.length;
        if (knowledge === "full") expect(full, `seed ${seed}, ${turn}°, leg ${k}`).toBeGreaterThan(0.3);
      });
  });
});
