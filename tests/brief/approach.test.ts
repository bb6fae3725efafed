/** An approach of a brief: its final course from the runway's two ends, what is kept of it and what is refused. */
import geographiclib from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import type { ApproachExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { inverse } from "../../src/geodesy/index.ts";
import { type Issue, UnusableInput } from "../../src/quantity/issue.ts";
import { issueSentence } from "../../src/report/words/issue.ts";
import { truthRows } from "../support/csv.ts";
import { near, nearDirection } from "../support/near.ts";

const FIXES =
  "fixes: { LUMDO: { lat: 35.734, lon: 172.462 }, TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 2.5 } }";
const RUNWAY =
  "runway: { ident: '22', threshold: [35.672, 172.395], end: [35.6619, 172.3840], elevation_ft: 420 }";
const text = (approach: string) => `brief: 1\n${FIXES}\nexercises:\n  - { approach: { ${approach} } }\n`;
const TIME = Date.UTC(2026, 9, 17);
const resolved = (approach: string): ApproachExercise => {
  const brief = resolveBrief(readBrief(text(approach), "brief.yaml"), { time: TIME });
  const [exercise] = brief.exercises;
  if (exercise?.kind !== "approach") throw new Error("no approach");
  return exercise;
};
const issuesOf = (approach: string): readonly Issue[] => {
  try {
    return readBrief(text(approach), "brief.yaml").issues;
  } catch (error) {
    if (error instanceof UnusableInput) return error.issues;
    throw error;
  }
};
const codesOf = (approach: string): string[] => issuesOf(approach).map((i) => i.code);

describe("open list of runways (OurAirports, ODbL 1.0; see tests/truth/runways.csv)", () => {
  const rows = truthRows("runways.csv");
  it("holds at least 200 runways, from Alert to Antarctica and near 180 degrees on both sides", () => {
    expect(rows.length).toBeGreaterThanOrEqual(200);
    const latitudes = rows.map((r) => Number(r[2]));
    expect(Math.max(...latitudes)).toBeGreaterThan(70);
    expect(Math.min(...latitudes)).toBeLessThan(-50);
    expect(Math.min(...rows.map((r) => Number(r[4])))).toBeLessThan(-50);
    expect(Math.max(...rows.map((r) => Number(r[4])))).toBeGreaterThan(8000);
    expect(rows.some((r) => Number(r[3]) > 177)).toBe(true);
    expect(rows.some((r) => Number(r[3]) < -175)).toBe(true);
  });

  it("final courses both ways within 0.01 degrees of GeographicLib and of Vincenty's formula, lengths within 1 m", () => {
    for (const [
      field,
      end,
      lat,
      lon,
      elevation,
      farEnd,
      farLat,
      farLon,
      farElevation,
      ,
      course,
      length,
    ] of rows) {
      const write = (i: string, a: string[], b: string[], ft: string) =>
        resolved(
          `runway: { ident: "${i}", threshold: [${a}], end: [${b}], elevation_ft: ${ft} }, guidance: centre-line`,
        );
      const a = [lat!, lon!];
      const b = [farLat!, farLon!];
      const there = write(end!, a, b, elevation!);
      const back = write(farEnd!, b, a, farElevation!);
      const library = geographiclib.Geodesic.WGS84.Inverse(
        Number(lat),
        Number(lon),
        Number(farLat),
        Number(farLon),
      );
      nearDirection(there.course.azimuth, library.azi1!, 0.01, `${field} ${end}`);
      nearDirection(there.course.azimuth, Number(course), 0.01, `${field} ${end}, Vincenty`);
      nearDirection(back.course.azimuth, library.azi2! + 180, 0.01, `${field} ${farEnd}`);
      near(inverse(there.runway.threshold, there.runway.end).distance, Number(length), 1, "m", field);
      expect(there.runway.elevation).toBe(Number(elevation));
    }
  });
});

describe("by construction: an approach as written", () => {
  it("keeps guidance, path, minimum and step-downs, farthest first", () => {
    const a = resolved(
      `${RUNWAY}, guidance: localizer, antenna_ft: 6000, final_fix: LUMDO, final_fix_ft: 2200, glide_path_deg: 3, decision_ft: 620, missed_to: TARNO, missed_course: 180, step_downs: [ { before_nm: 2, not_below_ft: 1100 }, { fix: LUMDO, not_below_ft: 2200 } ]`,
    );
    expect(a).toMatchObject({
      title: "Approach runway 22 over LUMDO, localizer",
      guidance: { kind: "localizer", antenna: 6000, width: null, station: null },
      finalFixAltitude: 2200,
      glidePath: { angle: 3, crossing: 50 },
      minimum: { kind: "decision", altitude: 620 },
      missedPoint: 0,
    });
    expect(a.stepDowns.map((s) => [s.name, s.altitude])).toEqual([
      ["LUMDO", 2200],
      ["2 NM", 1100],
    ]);
    near(a.stepDowns[0]!.distance, 4.95, 0.05, "NM");
    expect(a.missedTo?.ident).toBe("TARNO");
    // both magnetic by the model's variation at the threshold, about 2.5 degrees east there
    near(a.course.azimuth - a.magnetic!, 2.5, 0.5, "deg");
    expect(a.missedCourse!.magnetic).toBe(180);
    near(a.missedCourse!.azimuth - 180, a.course.azimuth - a.magnetic!, 1e-9, "deg");
  });

  it("a VOR approach's course runs through the station, its origin abeam the threshold", () => {
    const a = resolved(
      `${RUNWAY}, guidance: vor, station: TARNO, course: 224, final_fix: LUMDO, minimum_ft: 900`,
    );
    expect(a.magnetic).toBe(224);
    const toStation = inverse(a.course.origin, { latitude: 35.6, longitude: 172.3 });
    nearDirection(toStation.azimuthAtEnd, 226.5, 0.01); // 224 + the station's 2.5 east
    const square = inverse(a.course.origin, a.runway.threshold);
    near(Math.abs(Math.sin(((square.azimuthAtStart - a.course.azimuth) * Math.PI) / 180)), 1, 1e-3);
  });

  it.each([
    [
      "brief-runway-without-length",
      "runway: { threshold: [35, 172], end: [35, 172], elevation_ft: 0 }, guidance: lnav",
    ],
    ["brief-two-minimums", `${RUNWAY}, guidance: lnav, decision_ft: 600, minimum_ft: 800`],
    ["brief-vor-without-station", `${RUNWAY}, guidance: vor, final_fix: LUMDO`],
    ["brief-final-fix-misplaced", `${RUNWAY}, guidance: lnav, final_fix: TARNO`],
    ["brief-step-down-without-place", `${RUNWAY}, guidance: lnav, step_downs: [ { not_below_ft: 900 } ]`],
    ["brief-unknown-fix", `${RUNWAY}, guidance: lnav, final_fix: NOWHERE`],
    ["brief-not-allowed", `${RUNWAY}, guidance: localiser`],
    ["brief-unknown-key", `${RUNWAY}, guidance: lnav, decision_feet: 600`],
  ])("%s", (code, approach) => {
    expect(codesOf(approach)).toContain(code);
  });
  it("an unknown key of a step-down is told with those that it may have", () => {
    const step = "step_downs: [ { fix: LUMDO, ft: 900, not_below_ft: 900 } ]";
    expect(issuesOf(`${RUNWAY}, guidance: lnav, ${step}`)[0]!.facts.allowed).toBe(
      "fix, before_nm, not_below_ft",
    );
  });
  it("a final fix past the threshold is told so, with what may be the matter", () => {
    const facts = { fix: "LUMDO", beforeNm: -5.7, asideNm: 0, mostNm: 30, mostAsideNm: 3 };
    expect(issueSentence({ code: "brief-final-fix-misplaced", severity: "error", where: {}, facts })).toMatch(
      /lies 5\.7 NM past the threshold .*The ends of the runway may be exchanged\./,
    );
  });
});
