import { bboxPolygon, booleanPointInPolygon, length, nearestPointOnLine } from "@turf/turf";
import { describe, expect, it } from "vitest";
import { cutAtAntimeridian } from "../../src/report/geojson-line.ts";
import { debriefGeoJson } from "../../src/report/index.ts";
import { courses, debriefOf, gpxText, sampleDebrief } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const named = (json: ReturnType<typeof debriefGeoJson>, what: string) =>
  json.features.filter((f) => f.properties?.what === what);

describe("RFC 7946", () => {
  it("is a FeatureCollection whose positions are longitude first (3.1.1) and inside the flight's own box", async () => {
    const { document, series } = await sampleDebrief("calm-and-tidy");
    const json = JSON.parse(JSON.stringify(debriefGeoJson(document, series)));
    expect(json.type).toBe("FeatureCollection");
    expect(json.caution).toBe(document.caution);
    const box = bboxPolygon([171.5, 35, 173, 36.5]);
    const [flown] = named(json, "flown");
    expect(flown!.geometry.type).toBe("LineString");
    for (const place of (flown!.geometry as GeoJSON.LineString).coordinates)
      expect(booleanPointInPolygon(place, box)).toBe(true);
    expect(named(json, "exercise as flown").length).toBe(4);
    expect(named(json, "course").length).toBe(4);
    expect(named(json, "fix").map((f) => f.properties!.ident)).toEqual(["TARNO", "BELVO", "KESTI"]);
  });

  it("the path is as long as the document says, by turf's sphere within 0.5 %", async () => {
    const { document, series } = await sampleDebrief("calm-and-tidy");
    const [flown] = named(debriefGeoJson(document, series), "flown");
    const nm = length(flown as GeoJSON.Feature<GeoJSON.LineString>, { units: "nauticalmiles" });
    near(nm, document.log.distanceNm, 0.005 * document.log.distanceNm, "NM");
  });

  it("the worst point lies as far from the course line as the document says, by turf within 1 %", async () => {
    const { document, series } = await sampleDebrief("strong-crosswind-badly-corrected");
    const json = debriefGeoJson(document, series);
    courses(document).forEach(({ facts }, i) => {
      const at = series.path.timeMs.indexOf(Date.parse(facts.crossTrack.maxUtc!));
      const line = named(json, "course")[i] as GeoJSON.Feature<GeoJSON.LineString>;
      const place = [series.path.longitude[at]!, series.path.latitude[at]!];
      const off = nearestPointOnLine(line, place, { units: "nauticalmiles" }).properties.dist;
      near(off, Math.abs(facts.crossTrack.maxNm), 0.01 * Math.abs(facts.crossTrack.maxNm), "NM");
    });
  });

  it("3.1.9: the example line across 180° is cut there, no part crossing it", () => {
    // the section's own example: [170, 45] to [-170, 45]
    expect(
      cutAtAntimeridian([
        [170, 45],
        [-170, 45],
      ]),
    ).toEqual([
      [
        [170, 45],
        [180, 45],
      ],
      [
        [-180, 45],
        [-170, 45],
      ],
    ]);
  });

  it("3.1.9: a flight over 180° is a MultiLineString, each piece on one side, the whole as long as flown", async () => {
    const points = Array.from({ length: 400 }, (_, i) => {
      const longitude = 179.95 + i * 0.0006;
      return { latitude: 35.6, longitude: longitude > 180 ? longitude - 360 : longitude, seconds: i };
    });
    const { document, series } = await debriefOf(gpxText(points), null);
    const [flown] = named(debriefGeoJson(document, series), "flown");
    expect(flown!.geometry.type).toBe("MultiLineString");
    const pieces = (flown!.geometry as GeoJSON.MultiLineString).coordinates;
    expect(pieces.length).toBe(2);
    for (const piece of pieces) {
      expect(new Set(piece.map(([longitude]) => Math.sign(longitude!))).size).toBe(1);
    }
    const nm = length(flown as GeoJSON.Feature<GeoJSON.MultiLineString>, { units: "nauticalmiles" });
    near(nm, document.log.distanceNm, 0.005 * document.log.distanceNm, "NM");
  });
});
