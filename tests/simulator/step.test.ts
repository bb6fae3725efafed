/** Small steps and short offsets on the ellipsoid, against the full geodesic. */
import geographiclib from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { offset, stepOver } from "../../src/simulator/step.ts";
import { near, nearDirection } from "../support/near.ts";

const wgs84 = geographiclib.Geodesic.WGS84;
const PLACES = [
  { label: "the Orsa Vale", latitude: 35.6, longitude: 172.3 },
  { label: "over the antimeridian", latitude: 52, longitude: 179.9999 },
  { label: "the equator", latitude: 0, longitude: -30 },
  { label: "far south", latitude: -68, longitude: 20 },
];

describe("geographiclib-geodesic 2.2.0 (Karney 2013)", () => {
  it.each(PLACES)(
    "a step of 60 m at $label ends within 0.4 mm of the geodesic's end, 1 mm far south",
    (place) => {
      for (const azimuth of [0, 45, 100, 222, 300]) {
        const a = (azimuth * Math.PI) / 180;
        const to = stepOver(place, 60 * Math.sin(a), 60 * Math.cos(a));
        const truth = wgs84.Direct(place.latitude, place.longitude, azimuth, 60);
        const miss = wgs84.Inverse(to.latitude, to.longitude, truth.lat2!, truth.lon2!).s12!;
        // the geodesic's azimuth is that at its start: half the convergence over 60 m at 68 degrees moves its end by 0.7 mm
        near(miss, 0, Math.abs(place.latitude) > 60 ? 1e-3 : 4e-4, "m", `${azimuth}`);
      }
    },
  );

  it.each(PLACES)(
    "offsets at $label agree within 10 m and 0.01 degrees at 60 NM, 0.2 m at 15 NM",
    (place) => {
      for (const miles of [1, 15, 60])
        for (const azimuth of [5, 95, 200, 310]) {
          const to = wgs84.Direct(place.latitude, place.longitude, azimuth, miles * 1852);
          const r = offset(place, { latitude: to.lat2!, longitude: to.lon2! });
          near(r.distance, miles * 1852, 10 * (miles / 60) ** 3 + 0.02, "m", `${miles} NM ${azimuth}`);
          nearDirection(r.azimuthAtStart, azimuth, 0.01, `${miles} NM`);
          nearDirection(r.azimuthAtEnd, to.azi2!, 0.01, `${miles} NM end`);
        }
    },
  );

  it("keeps longitudes between -180 and 180", () => {
    expect(stepOver({ latitude: 52, longitude: 179.9999 }, 100, 0).longitude).toBeLessThan(-179);
    expect(stepOver({ latitude: 52, longitude: -179.9999 }, -100, 0).longitude).toBeGreaterThan(179);
  });
});
