import { describe, expect, it } from "vitest";
import { destination, inverse, localPlane, PLANE_REACH } from "../../src/geodesy/index.ts";
import { near, nearDirection } from "../support/near.ts";

const ORIGINS = [
  [35.6, 172.3],
  [0, 180],
  [-60, -179.99],
  [85, 10],
  [-89.9, 40],
  [90, 0],
  [51.4, -0.2],
] as const;

describe("GeographicLib 2.2.0, lengths and directions on WGS84", () => {
  it.each(ORIGINS)("a plane at %d %d: lengths within 1 cm a km all over its reach", (latitude, longitude) => {
    const origin = { latitude, longitude };
    const plane = localPlane(origin);
    let worst = 0;
    for (let azimuth = 0; azimuth < 360; azimuth += 30) {
      for (const distance of [100, 10_000, PLANE_REACH]) {
        const a = destination(origin, azimuth, distance);
        const pa = plane.toPlane(a.latitude, a.longitude);
        for (let way = 0; way < 360; way += 45) {
          const b = destination(a, way, 1000);
          const pb = plane.toPlane(b.latitude, b.longitude);
          worst = Math.max(worst, Math.abs(Math.hypot(pb.east - pa.east, pb.north - pa.north) - 1000));
          // Direction: the straight line on the plane, turned by the convergence half way, against the geodesic.
          const plain = (Math.atan2(pb.east - pa.east, pb.north - pa.north) * 180) / Math.PI;
          const half = plane.toPosition((pa.east + pb.east) / 2, (pa.north + pb.north) / 2);
          const ends = inverse(half, b);
          if (Math.abs(latitude) < 86)
            nearDirection(plain + half.convergence, ends.azimuthAtStart, 0.002, "direction");
        }
      }
    }
    expect(worst, `worst ${worst} m a km`).toBeLessThan(0.01);
  });

  it.each(ORIGINS)("a plane at %d %d: there and back within 1 um", (latitude, longitude) => {
    const plane = localPlane({ latitude, longitude });
    for (const [east, north] of [
      [0, 0],
      [1, -2],
      [-39_000, 5000],
      [300, 30_000],
    ] as const) {
      const p = plane.toPosition(east, north);
      const back = plane.toPlane(p.latitude, p.longitude);
      near(back.east, east, 1e-6, "m");
      near(back.north, north, 1e-6, "m");
    }
  });

  it("refuses an origin that is no place", () => {
    expect(() => localPlane({ latitude: Number.NaN, longitude: 0 })).toThrow(RangeError);
  });
});
