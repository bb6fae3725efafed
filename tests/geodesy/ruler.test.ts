import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alongAcrossExact,
  type Course,
  courseRuler,
  courseThrough,
  measureColumns,
  positionOn,
  type Ruler,
} from "../../src/geodesy/index.ts";
import { near, nearDirection } from "../support/near.ts";

const NM = 1852;
const CM = 0.01;

/** The place is built on the course by GeographicLib's Direct, so where it lies is known without the code under test. */
function missAt(course: Course, along: number, across: number, ruler: Ruler = courseRuler(course)) {
  const place = positionOn(course, along, across);
  ruler.measure(place.latitude, place.longitude);
  const turn = ((ruler.courseAtFoot - place.course + 540) % 360) - 180;
  return {
    metres: Math.max(Math.abs(ruler.along - along), Math.abs(ruler.across - across)),
    degrees: Math.abs(turn),
  };
}

describe("GeographicLib's Direct, along a course and then square off it", () => {
  it("the ruler reads within 1 cm to 10 NM off courses to 500 NM, from 85 S to 85 N and over the antimeridian", () => {
    let worst = { metres: 0, degrees: 0, where: "" };
    let count = 0;
    for (let latitude = -85; latitude <= 85; latitude += 10) {
      for (let azimuth = 0; azimuth < 360; azimuth += 22.5) {
        const course = courseThrough({ latitude, longitude: 179.9 }, azimuth, 500 * NM);
        const ruler = courseRuler(course);
        for (let along = -20; along <= 500; along += 13.7) {
          for (const across of [-10, -3.3, -0.1, 0, 1, 10]) {
            const miss = missAt(course, along * NM, across * NM, ruler);
            count++;
            const where = `${latitude} ${azimuth} ${along} ${across}`;
            if (!(miss.metres <= worst.metres)) worst = { ...worst, metres: miss.metres, where };
            worst.degrees = Math.max(worst.degrees, miss.degrees);
          }
        }
      }
    }
    expect(count).toBeGreaterThan(60_000);
    expect(worst.metres, `worst ${worst.metres} m at ${worst.where}`).toBeLessThan(CM);
    expect(worst.degrees, `worst ${worst.degrees} degrees`).toBeLessThan(1e-5);
  });

  it("the same for 2000 courses and places drawn at random (fast-check, seed 20261017), in a fresh ruler", () => {
    let worst = 0;
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        real(-85, 85),
        real(-180, 180),
        real(0, 360),
        real(-500, 500),
        real(-10, 10),
        (latitude, longitude, azimuth, along, across) => {
          const miss = missAt(courseThrough({ latitude, longitude }, azimuth), along * NM, across * NM);
          worst = Math.max(worst, miss.metres);
          return miss.metres < CM;
        },
      ),
      { numRuns: 2000, seed: 20261017 },
    );
    expect(worst, `worst found ${worst} m`).toBeLessThan(CM);
  });

  it.each([20, 29.9, 30.1, 60, 300])("%d NM off the course it still reads within 1 cm", (across) => {
    for (const latitude of [-70, -35, 0, 20, 45, 60]) {
      for (let azimuth = 7; azimuth < 360; azimuth += 45) {
        const course = courseThrough({ latitude, longitude: -179.5 }, azimuth);
        const { metres } = missAt(course, 123 * NM, across * NM);
        expect(metres, `worst ${metres} m at ${latitude} ${azimuth}`).toBeLessThan(CM);
      }
    }
  });

  it("the exact form reads within 1 um to 1000 km off, with the foot before the origin too", () => {
    for (const latitude of [-80, -35, 0, 45, 70]) {
      for (let azimuth = 7; azimuth < 360; azimuth += 45) {
        const course = courseThrough({ latitude, longitude: 179 }, azimuth);
        for (const [along, across] of [
          [-3e5, 1e6],
          [0, 5],
          [4e5, -1e5],
          [2e6, 1e3],
          [10, 0.001],
        ] as const) {
          const place = positionOn(course, along, across);
          const r = alongAcrossExact(course, place);
          near(r.along, along, 1e-6, "m", "along");
          near(r.across, across, 1e-6, "m", "across");
          nearDirection(r.courseAtFoot, place.course, 1e-6);
        }
      }
    }
  });

  it("a course over the pole", () => {
    const course = courseThrough({ latitude: 88, longitude: 30 }, 0);
    const ruler = courseRuler(course);
    for (let along = 0; along < 500_000; along += 997) {
      expect(missAt(course, along, 5000, ruler).metres, `at ${along}`).toBeLessThan(CM);
    }
  });
});

describe("by construction: invariances", () => {
  const course = courseThrough({ latitude: 35.6, longitude: 172.3 }, 63);
  const places = [-300, -20, 0, 1, 88.8, 400].flatMap((a) =>
    [-9, 0.2, 7].map((c) => positionOn(course, a * NM, c * NM)),
  );
  const read = (c: Course, list: readonly { latitude: number; longitude: number }[]) =>
    measureColumns(
      c,
      Float64Array.from(list, (p) => p.latitude),
      Float64Array.from(list, (p) => p.longitude),
    );
  const base = read(course, places);

  it("moving all by 9 degrees of longitude, over the antimeridian, changes nothing by 1 um", () => {
    const move = (p: { latitude: number; longitude: number }) => ({
      ...p,
      longitude: ((p.longitude + 9 + 180) % 360) - 180,
    });
    const moved = read({ ...course, origin: move(course.origin) }, places.map(move));
    for (let i = 0; i < places.length; i++) {
      near(moved.along[i]!, base.along[i]!, 1e-6, "m");
      near(moved.across[i]!, base.across[i]!, 1e-6, "m");
    }
  });

  it("mirroring at a meridian swaps left and right, mirroring at the equator too", () => {
    const west = read(
      { ...course, azimuth: 297, origin: { latitude: 35.6, longitude: -172.3 } },
      places.map((p) => ({ ...p, longitude: -p.longitude })),
    );
    const south = read(
      { ...course, azimuth: 117, origin: { latitude: -35.6, longitude: 172.3 } },
      places.map((p) => ({ ...p, latitude: -p.latitude })),
    );
    for (let i = 0; i < places.length; i++) {
      for (const mirrored of [west, south]) {
        near(mirrored.along[i]!, base.along[i]!, 1e-6, "m");
        near(mirrored.across[i]!, -base.across[i]!, 1e-6, "m");
      }
    }
  });

  it("the reverse course reads the same with both signs changed", () => {
    const back = read({ ...course, azimuth: 243 }, places);
    for (let i = 0; i < places.length; i++) {
      near(back.along[i]!, -base.along[i]!, 1e-6, "m");
      near(back.across[i]!, -base.across[i]!, 1e-6, "m");
      nearDirection(back.courseAtFoot[i]!, base.courseAtFoot[i]! + 180, 1e-6);
    }
  });

  it("a place that is not a number reads NaN and spoils no other", () => {
    const r = read(course, [places[0]!, { latitude: Number.NaN, longitude: 0 }, places[1]!]);
    expect([r.along[1], r.across[1], r.courseAtFoot[1]]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    near(r.across[2]!, base.across[1]!, 1e-6, "m");
  });

  it("wrong calls throw", () => {
    expect(() => measureColumns(course, new Float64Array(2), new Float64Array(3))).toThrow(RangeError);
    expect(() => courseThrough({ latitude: 95, longitude: 0 }, 0)).toThrow(RangeError);
    expect(() => courseThrough(course.origin, Number.NaN)).toThrow(RangeError);
    expect(() => courseThrough(course.origin, 0, -1)).toThrow(RangeError);
    expect(() => alongAcrossExact(course, { latitude: Number.NaN, longitude: 0 })).toThrow(RangeError);
  });
});
