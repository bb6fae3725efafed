import { describe, expect, it } from "vitest";
import {
  alongAcrossExact,
  courseRuler,
  courseThrough,
  destination,
  inverse,
  positionOn,
} from "../../src/geodesy/index.ts";
import { dms, truthRows } from "../support/csv.ts";
import { near, nearDirection } from "../support/near.ts";

const NM = 1852;
const MM = 0.001;
const rows = (table: string) => truthRows(`faa-8260-54a-${table}.csv`);

describe("FAA Order 8260.54A, Appendix 2, WGS84PerpIntercept", () => {
  it("no row is skipped: the table has 44", () => expect(rows("PerpIntercept")).toHaveLength(44));

  for (const [name, lat, lon, azimuth, toLat, toLon, bearing, distance, footLat, footLon] of rows(
    "PerpIntercept",
  )) {
    const course = courseThrough({ latitude: dms(lat!), longitude: dms(lon!) }, Number(azimuth));
    const place = { latitude: dms(toLat!), longitude: dms(toLon!) };
    const foot = { latitude: dms(footLat!), longitude: dms(footLon!) };

    it(`${name}: foot within 1 mm, distance within 1e-5 NM, azimuth to the foot within 1e-5 degrees`, () => {
      const { along, across, courseAtFoot } = alongAcrossExact(course, place);
      near(Math.abs(across) / NM, Number(distance), 1e-5, "NM", "across");
      const ours = positionOn(course, along);
      near(inverse(ours, foot).distance, 0, MM, "m", "foot");
      const toFoot = inverse(place, ours);
      nearDirection(toFoot.azimuthAtStart, Number(bearing), 1e-5, "to the foot");
      // The way to the foot arrives square to the course: from the left side it arrives pointing right of it.
      nearDirection(toFoot.azimuthAtEnd, courseAtFoot + (across < 0 ? 90 : -90), 1e-5, "square");
    });

    it(`${name}: the ruler reads the same within 1 cm, offsets to 155 NM included`, () => {
      const exact = alongAcrossExact(course, place);
      const ruler = courseRuler(course);
      ruler.measure(place.latitude, place.longitude);
      near(ruler.along, exact.along, 0.01, "m", "along");
      near(Math.abs(ruler.across) / NM, Number(distance), 1e-5, "NM", "across");
      nearDirection(ruler.courseAtFoot, exact.courseAtFoot, 1e-6, "course at foot");
    });
  }
});

describe("FAA Order 8260.54A, Appendix 2, WGS84Destination (Direct) and WGS84InvDist (Inverse)", () => {
  it("no row is skipped: 192 and 192", () => {
    expect(rows("Direct")).toHaveLength(192);
    expect(rows("Inverse")).toHaveLength(192);
  });

  it("places 192 destinations within 1 mm", () => {
    for (const [name, lat, lon, distance, azimuth, toLat, toLon] of rows("Direct")) {
      const to = destination(
        { latitude: dms(lat!), longitude: dms(lon!) },
        Number(azimuth),
        Number(distance) * NM,
      );
      near(inverse(to, { latitude: dms(toLat!), longitude: dms(toLon!) }).distance, 0, MM, "m", name);
    }
  });

  it("measures 192 pairs within 1e-5 NM and 1e-5 degrees", () => {
    for (const [name, lat, lon, toLat, toLon, azimuth, reverse, distance] of rows("Inverse")) {
      const r = inverse(
        { latitude: dms(lat!), longitude: dms(lon!) },
        { latitude: dms(toLat!), longitude: dms(toLon!) },
      );
      near(r.distance / NM, Number(distance), 1e-5, "NM", name);
      nearDirection(r.azimuthAtStart, Number(azimuth), 1e-5, name);
      nearDirection(r.azimuthAtEnd + 180, Number(reverse), 1e-5, `${name} reverse`);
    }
  });
});
