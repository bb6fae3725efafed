import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arcPlaces, destination, distanceFlown, inverse, measureAround } from "../../src/geodesy/index.ts";
import { near, nearDirection } from "../support/near.ts";

const one = (value: number) => Float64Array.of(value);

describe("C. F. F. Karney's geodesics (GeographicLib) as the authority: places about a station", () => {
  it("distance within 1 cm, radial and outward direction within 1e-5°, to 60 NM, latitudes to 80°, over 180°", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.constantFrom(-180, -179.9, -90.25, 0, 172.3, 179.95),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 1, max: 111_000, noNaN: true }),
        (latitude, longitude, radial, metres) => {
          const station = { latitude, longitude };
          const to = destination(station, radial, metres);
          const seen = measureAround(station, one(to.latitude), one(to.longitude));
          near(seen.distance[0]!, metres, 0.01, "m", "distance");
          const within = Math.max(1e-5, 1e-4 / metres);
          nearDirection(seen.radial[0]!, radial, within, "radial");
          nearDirection(seen.outward[0]!, to.azimuth, within, "outward");
        },
      ),
      { numRuns: 400, seed: 5000 },
    );
  });

  it("farther away it is the geodesic itself", () => {
    const station = { latitude: 35.6, longitude: 172.3 };
    const far = { latitude: 39, longitude: -178 };
    const seen = measureAround(station, one(far.latitude), one(far.longitude));
    const exact = inverse(station, far);
    expect([seen.distance[0], seen.radial[0], seen.outward[0]]).toEqual([
      exact.distance,
      exact.azimuthAtStart,
      exact.azimuthAtEnd,
    ]);
  });

  it("a place that is not a number is not known; the station itself is at 0", () => {
    const station = { latitude: 35.6, longitude: 172.3 };
    const seen = measureAround(station, Float64Array.of(Number.NaN, 35.6), Float64Array.of(172.3, 172.3));
    expect(seen.distance[0]).toBeNaN();
    expect(seen.radial[0]).toBeNaN();
    near(seen.distance[1]!, 0, 1e-6, "m");
  });
});

describe("the geodesic as the authority: distance flown", () => {
  it("is the sum of the steps within a millimetre a mile (chords of 50 m), an unreadable place in between left out", () => {
    const places = arcPlaces({ latitude: 35.6, longitude: 179.95 }, 18_520, 20, 70, 0.15);
    const latitude = Float64Array.from(places, (p) => p.latitude);
    const longitude = Float64Array.from(places, (p) => p.longitude);
    latitude[100] = Number.NaN;
    const flown = distanceFlown(latitude, longitude);
    let sum = 0;
    for (let i = 1; i < places.length; i++) {
      if (i === 100) continue;
      sum += inverse(places[i === 101 ? 99 : i - 1]!, places[i]!).distance;
      near(flown[i]!, sum, 0.02, "m");
    }
    expect(flown[100]).toBe(flown[99]);
  });
});

describe("FAA Order 8260.54A (2007), appendix 2: length of a DME arc", () => {
  // Centre 38:13:25.1 N 77:54:23.4 W, radius 5 NM, azimuths 91 to 226: 11.780968 NM clockwise, 19.634947 the other way.
  const centre = { latitude: 38 + 13 / 60 + 25.1 / 3600, longitude: -(77 + 54 / 60 + 23.4 / 3600) };
  const length = (turn: number) => {
    const places = arcPlaces(centre, 5 * 1852, 91, turn, 0.25);
    let sum = 0;
    for (let i = 1; i < places.length; i++) sum += inverse(places[i - 1]!, places[i]!).distance;
    return sum / 1852;
  };

  it.each([
    ["clockwise", 135, 11.780968],
    ["anticlockwise", -225, 19.634947],
  ])("%s within 1e-4 NM (chords of 0.25° are 8e-7 of it short)", (_, turn, miles) => {
    near(length(turn), miles, 1e-4, "NM");
  });

  it("ends on both radials, at the radius", () => {
    const places = arcPlaces(centre, 5 * 1852, 91, 135);
    expect(places).toHaveLength(55);
    for (const [place, radial] of [
      [places[0]!, 91],
      [places.at(-1)!, 226],
    ] as const) {
      const { distance, azimuthAtStart } = inverse(centre, place);
      near(distance, 5 * 1852, 1e-3, "m");
      nearDirection(azimuthAtStart, radial, 1e-9);
    }
  });
});
