import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { WindRecord } from "../../src/index.ts";
import { isLight, windReach } from "../../src/index.ts";
import { near } from "../support/near.ts";

const full = (
  from: number,
  kt: number,
  ellipse: readonly [major: number, minor: number, axis: number] | null,
): WindRecord => ({
  knowledge: "full",
  fromTrueDeg: from,
  speedKt: kt,
  alongKt: null,
  acrossKt: null,
  along95Kt: null,
  across95Kt: null,
  ellipse95Kt: ellipse && { majorKt: ellipse[0], minorKt: ellipse[1], majorTrueDeg: ellipse[2] },
  tasKt: 100,
  tas95Kt: 3,
  restsOn: "turns",
});

describe("how far the 95 % ellipse of a wind reaches, seen from calm", () => {
  it("Euclid III: tangents from a point 20 away to a circle of 10 stand 30° to each side", () => {
    const { direction, speed } = windReach(full(5, 20, [10, 10, 77]))!;
    near(direction!.low, -25, 1e-9, "°");
    near(direction!.high, 35, 1e-9, "°");
    near(speed.low, 10, 1e-9, "kt");
    near(speed.high, 30, 1e-9, "kt");
  });

  it("by construction: a thin ellipse across a wind from 360 opens 45° at as much as the wind, one along it nothing", () => {
    const across = windReach(full(360, 10, [10, 1e-5, 90]))!;
    near(across.direction!.high - 360, 45, 0.01, "°");
    near(across.speed.high, 10, 0.01, "kt");
    const along = windReach(full(360, 10, [5, 1e-5, 0]))!;
    near(along.direction!.high - along.direction!.low, 0, 0.01, "°");
    near(along.speed.low, 5, 0.01, "kt");
  });

  it("has no direction where the ellipse holds calm, though its long axis may be longer than the wind where not", () => {
    expect(windReach(full(200, 4, [5, 5, 0]))!.direction).toBeNull();
    expect(isLight(full(200, 4, [5, 5, 0]))).toBe(true);
    expect(isLight(full(360, 4, [5, 1, 90]))).toBe(false);
    expect(
      windReach({ ...full(0, 0, null), knowledge: "none", fromTrueDeg: null, speedKt: null }),
    ).toBeNull();
  });

  it("by definition of a tangent: every point of the ellipse lies between the bounds, and some point is at each", () => {
    const of = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
    fc.assert(
      fc.property(
        of(0, 359.9),
        of(6, 60),
        of(0.5, 5),
        of(0.1, 1),
        of(0, 179.9),
        (from, kt, major, share, axis) => {
          const { direction, speed } = windReach(full(from, kt, [major, major * share, axis]))!;
          const rad = Math.PI / 180;
          let [low, high] = [180, -180];
          for (let a = 0; a < 720; a++) {
            const [p, q] = [major * Math.cos((a / 2) * rad), major * share * Math.sin((a / 2) * rad)];
            const east = kt * Math.sin(from * rad) + p * Math.sin(axis * rad) + q * Math.cos(axis * rad);
            const north = kt * Math.cos(from * rad) + p * Math.cos(axis * rad) - q * Math.sin(axis * rad);
            const off = ((((Math.atan2(east, north) / rad - from + 180) % 360) + 360) % 360) - 180;
            const along = east * Math.sin(from * rad) + north * Math.cos(from * rad);
            low = Math.min(low, off);
            high = Math.max(high, off);
            expect(along).toBeLessThanOrEqual(speed.high + 1e-9);
            expect(along).toBeGreaterThanOrEqual(speed.low - 1e-9);
          }
          // half a degree along the ellipse misses the tangent by less than this
          near(direction!.low - from, low, 0.05, "°");
          near(direction!.high - from, high, 0.05, "°");
        },
      ),
      { numRuns: 100, seed: 20261017 },
    );
  });
});
