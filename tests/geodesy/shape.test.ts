import { area, booleanPointInPolygon, length, point } from "@turf/turf";
import { describe, expect, it } from "vitest";
import {
  alongAcrossExact,
  courseCorridor,
  courseLine,
  courseThrough,
  limitAt,
  positionOn,
} from "../../src/geodesy/index.ts";
import { near } from "../support/near.ts";

const NM = 1852;
const course = courseThrough({ latitude: 35.6, longitude: 179.5 }, 75, 100 * NM);

describe("@turf/turf 7.4.0 reads the shapes", () => {
  it("a line over the antimeridian stays in one piece, on the geodesic, as long as it should be within 0.5 % (sphere)", () => {
    const line = courseLine(course, 0, 100 * NM);
    near(length(line, { units: "meters" }) / (100 * NM), 1, 0.005);
    const c = line.geometry.coordinates;
    expect(c.at(-1)![0]).toBeGreaterThan(180);
    for (let i = 1; i < c.length; i++) {
      const middle = {
        latitude: (c[i - 1]![1]! + c[i]![1]!) / 2,
        longitude: (c[i - 1]![0]! + c[i]![0]!) / 2,
      };
      near(alongAcrossExact(course, middle).across, 0, 0.1, "m", "between samples");
    }
  });

  it("a linear corridor of 1 NM each side covers 200 square NM within 1 %, and holds what lies within", () => {
    const shape = courseCorridor(course, 0, 100 * NM, { kind: "linear", metres: NM });
    near(area(shape) / (200 * NM * NM), 1, 0.01);
    const has = (across: number) => {
      const p = positionOn(course, 10 * NM, across * NM);
      return booleanPointInPolygon(point([p.longitude, p.latitude]), shape);
    };
    expect([-1.01, -0.99, 0.99, 1.01].map(has)).toEqual([false, true, true, false]);
  });

  it("an angular limit is the tangent of the angle times the distance from the station", () => {
    near(limitAt({ kind: "angular", degrees: 45, stationAlong: 5000 }, 2000), 3000, 1e-9, "m");
    const shape = courseCorridor(course, 0, 10 * NM, { kind: "angular", degrees: 10, stationAlong: 0 });
    near(area(shape) / (100 * NM * NM * Math.tan(Math.PI / 18)), 1, 0.01);
  });

  it("runs anticlockwise and closes (RFC 7946, section 3.1.6)", () => {
    const ring = courseCorridor(course, 0, 10 * NM, { kind: "linear", metres: NM }).geometry.coordinates[0]!;
    expect(ring.at(-1)).toEqual(ring[0]);
    let twice = 0;
    for (let i = 1; i < ring.length; i++)
      twice += ring[i - 1]![0]! * ring[i]![1]! - ring[i]![0]! * ring[i - 1]![1]!;
    expect(twice).toBeGreaterThan(0);
  });

  it("refuses an extent that is none", () => {
    expect(() => courseCorridor(course, 5, 5, { kind: "linear", metres: 1 })).toThrow(RangeError);
    expect(() => courseLine(course, Number.NaN, 5)).toThrow(RangeError);
  });
});
