import geomagnetism from "geomagnetism";
import { magvar } from "magvar";
import { describe, expect, it } from "vitest";
import { variationAt } from "../../src/geodesy/index.ts";
import { truthRows } from "../support/csv.ts";
import { near } from "../support/near.ts";

/** Decimal years as the package and NOAA count them: 365 days in the years at hand but 2028. */
const timeOf = (year: number) => {
  const whole = Math.floor(year);
  return Date.UTC(whole, 0, 1) + (year - whole) * 365 * 86_400_000;
};
const long = truthRows("wmm2025-100.csv").filter((r) => r[0] !== "year");
const short = truthRows("wmm2025-12.csv").filter((r) => r[0] !== "year");

describe("NOAA/NCEI, World Magnetic Model 2025, test values", () => {
  it("no row is skipped: 100 and 12", () => {
    expect(long).toHaveLength(100);
    expect(short).toHaveLength(12);
  });

  it("the model itself gives 112 of 112 declinations to the printed 0.01 degrees at the rows' heights", () => {
    const rows = [
      ...long.map((r) => [r[0], r[1], r[2], r[3], r[4]]),
      ...short.map((r) => [r[0], r[1], r[2], r[3], r[10]]),
    ];
    let checked = 0;
    for (const [year, height, lat, lon, d] of rows.map((r) => r.map(Number))) {
      const model = geomagnetism.model(new Date(timeOf(year!)));
      near(model.point([lat!, lon!, height!]).decl, d!, 0.0051, "degrees", `${year} ${lat} ${lon}`);
      checked++;
    }
    expect(checked).toBe(112);
  });

  it("variationAt gives the six rows at sea level to the printed 0.01 degrees", () => {
    const sea = short.filter((r) => r[1] === "0");
    expect(sea).toHaveLength(6);
    for (const r of sea) {
      const v = variationAt({ latitude: Number(r[2]), longitude: Number(r[3]) }, timeOf(Number(r[0])));
      near(v!.degrees, Number(r[10]), 0.0051, "degrees", r.join(" "));
      expect(v!.model).toBe("WMM2025");
    }
  });
});

describe("magvar 2.2.0, another implementation of WMM2025", () => {
  it("agrees within 0.01 degrees round the world between 75 S and 75 N", () => {
    for (let latitude = -75; latitude <= 75; latitude += 15) {
      for (let longitude = -180; longitude < 180; longitude += 30) {
        const v = variationAt({ latitude, longitude }, timeOf(2026.8));
        near(v!.degrees, magvar(latitude, longitude, 0, 2026.8), 0.01, "degrees", `${latitude} ${longitude}`);
      }
    }
  });
});

describe("windows of the models in geomagnetism 0.2.0", () => {
  const place = { latitude: 35.6, longitude: 172.3 };
  it.each([
    ["2014-12-01T00:00:00Z", null],
    ["2016-06-01T00:00:00Z", "WMM2015"],
    ["2019-06-01T00:00:00Z", "WMM2015v2"],
    ["2022-06-01T00:00:00Z", "WMM2020"],
    ["2026-10-17T00:00:00Z", "WMM2025"],
    ["2029-11-13T02:59:00Z", "WMM2025"],
    ["2029-11-13T03:01:00Z", null],
    ["1970-01-01T00:00:00Z", null],
  ])("%s: %s", (time, model) => expect(variationAt(place, Date.parse(time))?.model ?? null).toBe(model));

  it("refuses what is no time or no place", () => {
    expect(() => variationAt(place, Number.NaN)).toThrow(RangeError);
    expect(() => variationAt({ latitude: 91, longitude: 0 }, 0)).toThrow(RangeError);
  });
});
