import { describe, it } from "vitest";
import { earthOf } from "../../src/geodesy/earth.ts";
import {
  alongAcrossExact,
  courseBetween,
  courseRuler,
  destination,
  inverse,
  positionOn,
} from "../../src/geodesy/index.ts";
import { near, nearDirection } from "../support/near.ts";

const at = (latitude: number, longitude: number) => ({ latitude, longitude });
const dm = (d: number, m: number, s = 0) => d + m / 60 + s / 3600;

describe("Karney, GeodTest.dat: lines of the test set for geodesics on WGS84", () => {
  // The set prints distances to 0.1 um; degrees as far as each line is quoted. 1e-9 degrees is 0.1 mm.
  it.each([
    ["long", 36.530042355041, 176.125875162171, -48.16427077909777, 5.76234469467651, 9398502.0434687],
    ["9 digits", 63.758775485865, 63.327049113388, 25.179740339437, 107.504991932892, 8337896.7811702],
    ["short, 76 m", 19.707097385334, 20.996796804557, 19.7077395828103, 0.000260256428101, 76.1478894],
    ["short, 249 m", 23.104245923137, 108.788775202534, 23.1035204302805, 0.002305237470119, 249.4508219],
    ["short, 397 m", 78.10174623178, 124.870465352256, 78.09971103163879, 0.014156770744058, 397.364659],
    [
      "near antipodal",
      8.226828747671,
      111.1269645725,
      -8.516119211674269,
      178.688979582629,
      19886305.6710041,
    ],
  ])(
    "%s: destination within 1e-9 degrees, distance within 1 um, azimuth from it",
    (_, lat1, azi1, lat2, lon2, s12) => {
      const to = destination(at(lat1, 0), azi1, s12);
      near(to.latitude, lat2, 1e-9, "degrees", "latitude");
      near(to.longitude, lon2, 1e-9, "degrees", "longitude");
      const back = inverse(at(lat1, 0), at(lat2, lon2));
      near(back.distance, s12, 1e-6, "m", "distance");
      nearDirection(back.azimuthAtStart, azi1, s12 < 1000 ? 1e-6 : 1e-8, "azimuth");
    },
  );
});

describe("Karney 2013, Algorithms for geodesics, J. Geodesy 87, 43-55, table 2", () => {
  it("10,000 km from 40 N 0 E at 30 degrees, to the printed digits", () => {
    const to = destination(at(40, 0), 30, 1e7);
    near(to.latitude, 41.7933102051, 1e-10, "degrees");
    near(to.longitude, 137.8449000438, 1e-10, "degrees");
    nearDirection(to.azimuth, 149.090169318, 1e-9);
  });
});

describe("GeographicLib documentation", () => {
  it("JFK to LHR: 5551759.400 m, 51.199 and 107.822 degrees", () => {
    const r = inverse(at(40.6, -73.8), at(51.6, -0.5));
    near(r.distance, 5551759.40031868, 1e-6, "m");
    nearDirection(r.azimuthAtStart, 51.19888284557982, 1e-10);
    nearDirection(r.azimuthAtEnd, 107.82177673551425, 1e-10);
  });
  it("5,500 km from JFK at 51 degrees", () => {
    const to = destination(at(40.6, -73.8), 51, 5.5e6);
    near(to.latitude, 51.884565, 5e-7, "degrees");
    near(to.longitude, -1.141173, 5e-7, "degrees");
    nearDirection(to.azimuth, 107.189397, 5e-7);
  });
  it("Wellington to Salamanca, nearly antipodal: 19959679.267 m", () => {
    near(inverse(at(-41.32, 174.81), at(40.96, -5.5)).distance, 19959679.267353822, 1e-5, "m");
  });
});

describe("Geoscience Australia, Vincenty's formulae, worked example on GRS80 (WGS84 the same to a millimetre)", () => {
  it("Flinders Peak to Buninyong: 54972.271 m, 306-52-05.37, reverse 127-10-25.07", () => {
    const r = inverse(
      at(-dm(37, 57, 3.7203), dm(144, 25, 29.5244)),
      at(-dm(37, 39, 10.1561), dm(143, 55, 35.3839)),
    );
    near(r.distance, 54972.271, 0.001, "m");
    nearDirection(r.azimuthAtStart, dm(306, 52, 5.37), 0.005 / 3600);
    nearDirection(r.azimuthAtEnd + 180, dm(127, 10, 25.07), 0.005 / 3600);
  });
});

describe("Baselga and Martinez-Llario 2018, point to geodesic, Stud. Geophys. Geod. 62, 353-363", () => {
  const cases = [
    [
      "case 1, 24 km",
      at(52, 5),
      at(51.4, 6),
      at(52, 5.5),
      51.8460892270512,
      5.26042849496107,
      23767.7241838,
      5e-8,
    ],
    [
      "case 2, 1011 km",
      at(42, 29),
      at(39, -77),
      at(64, -22),
      54.9285314971169,
      -21.9372910660488,
      1010585.99883681,
      1e-6,
    ],
    [
      "case 3, 3928 km",
      at(42, 29),
      at(-35, -70),
      at(64, -22),
      37.9781176779955,
      18.3490633150769,
      3928422.73531622,
      1e-6,
    ],
  ] as const;
  it.each(cases)(
    "%s: foot within 1e-9 degrees, distance to the printed digits",
    (_, a, b, p, lat, lon, d, limit) => {
      const course = courseBetween(a, b);
      const r = alongAcrossExact(course, p);
      near(Math.abs(r.across), d, limit, "m", "distance");
      const foot = positionOn(course, r.along);
      near(foot.latitude, lat, 1e-9, "degrees", "latitude");
      near(foot.longitude, lon, 1e-9, "degrees", "longitude");
      const ruler = courseRuler(course);
      ruler.measure(p.latitude, p.longitude);
      near(Math.abs(ruler.across), d, 0.01, "m", "ruler");
    },
  );
});

describe("Williams, Aviation Formulary V1.47, worked example LAX-JFK, on its sphere (1 NM = 1 arc minute)", () => {
  it("cross-track 7.4523 NM right, along-track 99.588 NM at 34-30N 116-30W", () => {
    // A sphere whose arc minute is 1852 m, given to the same code in place of WGS84. The printed 7.4512 comes of
    // five-figure intermediates; 7.4523 is the Formulary's formula in full precision.
    const sphere = earthOf((1852 * 60 * 180) / Math.PI, 0);
    const way = sphere.Inverse(dm(33, 57), -dm(118, 24), dm(40, 38), -dm(73, 47));
    near(way.s12! / 1852, 2143.7261, 1e-4, "NM", "distance");
    const course = { origin: at(dm(33, 57), -dm(118, 24)), azimuth: way.azi1!, length: way.s12! };
    nearDirection(course.azimuth, 65.892167, 1e-6);
    const r = alongAcrossExact(course, at(34.5, -116.5), sphere);
    near(r.across / 1852, 7.4523, 5e-5, "NM", "across");
    near(r.along / 1852, 99.588, 5e-4, "NM", "along");
  });
});
