import { describe, expect, it } from "vitest";
import type { CourseExercise } from "../../src/brief/brief.ts";
import { briefFromRoute, readBrief, resolveBrief } from "../../src/brief/index.ts";
import { inverse } from "../../src/geodesy/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { near, nearDirection } from "../support/near.ts";

const TIME = Date.UTC(2026, 9, 17, 9, 40);

function resolved(exercise: string, time: number | null = TIME) {
  const text = `brief: 1
fixes:
  EAST: { lat: 35.6, lon: 172.3, kind: vor, declination: 10 }
  WEST: { lat: 35.6, lon: 172.3, kind: vor, declination: -15 }
  PLAIN: { lat: 35.6, lon: 172.3 }
  NORTH: { lat: 36.6, lon: 172.3, declination: 3 }
exercises:
  - { ${exercise} }
`;
  return resolveBrief(readBrief(text, "b.yaml"), { time });
}
const courseOf = (exercise: string, time: number | null = TIME) =>
  resolved(exercise, time).exercises[0] as CourseExercise;

describe("variation east is least, west is best (common practice, no source)", () => {
  it.each([
    ["course: 218, to: EAST", 228, 218],
    ["course: 218, to: WEST", 203, 218],
    ["course: 355, from: EAST", 5, 355],
    ["course: 10, from: WEST", 355, 10],
    ["course: 360, from: EAST", 10, 0],
  ])("%s: true %d from magnetic %d", (exercise, azimuth, magnetic) => {
    const course = courseOf(exercise);
    nearDirection(course.course.azimuth, azimuth, 1e-9);
    expect(course.magnetic).toBe(magnetic);
    expect(course.variation.from).toBe("station");
  });

  it("a course written true is not turned; its magnetic is for the words", () => {
    const course = courseOf("course: 218T, to: EAST");
    expect(course.course.azimuth).toBe(218);
    expect(course.magnetic).toBe(208);
    expect(course.variation).toMatchObject({ degrees: 10, from: "written-true", model: null });
  });
});

describe("variation by the World Magnetic Model at the fix on the flight's date", () => {
  it("about 2.5° E near 35.6 N 172.3 E in October 2026 (WMM2025, stated with the demonstration place, rounded)", () => {
    const course = courseOf("course: 218, to: PLAIN");
    expect(course.variation).toMatchObject({ from: "model", model: "WMM2025" });
    near(course.variation.degrees, 2.5, 0.3, "deg");
    near(course.course.azimuth, 218 + course.variation.degrees, 1e-9, "deg");
  });

  it("a log without times takes the latest model, and says so", () => {
    const brief = resolved("course: 218, to: PLAIN", null);
    expect(brief.issues).toMatchObject([
      {
        code: "variation-date-assumed",
        severity: "warning",
        where: { file: "b.yaml", line: 8 },
        facts: { fix: "PLAIN", model: "WMM2025", date: "2027-07-01" },
      },
    ]);
    near((brief.exercises[0] as CourseExercise).variation.degrees, 2.5, 0.5, "deg");
  });

  it("a date that no model covers leaves a magnetic course out, with an error", () => {
    const brief = resolved("course: 218, to: PLAIN", Date.UTC(1999, 7, 22));
    expect(brief.exercises).toEqual([]);
    expect(brief.issues).toMatchObject([
      { code: "no-variation", severity: "error", facts: { date: "1999-08-22" }, where: { line: 8 } },
    ]);
  });

  it.each(["course: 218T, to: PLAIN", "leg: [PLAIN, NORTH]", "course: 218, to: EAST"])(
    "that date does not hinder what needs no model: %s",
    (exercise) => {
      const brief = resolved(exercise, Date.UTC(1999, 7, 22));
      expect(brief.exercises).toHaveLength(1);
      expect(brief.issues).toEqual([]);
    },
  );
});

describe("the line of a leg", () => {
  it("runs from the first fix to the second, as the geodesic does", () => {
    const leg = courseOf("leg: [EAST, NORTH]");
    const truth = inverse({ latitude: 35.6, longitude: 172.3 }, { latitude: 36.6, longitude: 172.3 });
    expect(leg).toMatchObject({ form: "leg", fix: { ident: "NORTH" }, fromFix: { ident: "EAST" } });
    expect(leg.course.origin).toEqual({ latitude: 35.6, longitude: 172.3 });
    nearDirection(leg.course.azimuth, 0, 1e-9);
    near(leg.course.length!, truth.distance, 1e-6, "m");
    expect(leg.magnetic).toBe(350);
  });
});

describe("windows get the flight's date (by construction)", () => {
  const window = (between: string, start: number) => {
    const { between: w } = courseOf(`course: 218, to: EAST, between: ${between}`, start);
    return [w!.start, w!.end].map((t) => new Date(t).toISOString().slice(0, 19));
  };
  it.each([
    ["[09:44, 10:02:30]", TIME, "2026-10-17T09:44:00", "2026-10-17T10:02:30"],
    ["[09:30, 09:50]", TIME, "2026-10-17T09:30:00", "2026-10-17T09:50:00"],
    ["[23:50, 00:10]", Date.UTC(2026, 9, 17, 23, 40), "2026-10-17T23:50:00", "2026-10-18T00:10:00"],
    ["[00:10, 00:20]", Date.UTC(2026, 9, 17, 23, 40), "2026-10-18T00:10:00", "2026-10-18T00:20:00"],
    ["[23:58, 00:05]", Date.UTC(2026, 9, 18, 0, 1), "2026-10-17T23:58:00", "2026-10-18T00:05:00"],
    ["[9:44, 9:45Z]", TIME, "2026-10-17T09:44:00", "2026-10-17T09:45:00"],
  ])("%s", (between, start, from, to) => {
    expect(window(between, start)).toEqual([from, to]);
  });

  it("without a date the window is dropped, and that is said", () => {
    const brief = resolved("course: 218, to: EAST, between: [09:44, 09:50]", null);
    expect(brief.exercises[0]!.between).toBeNull();
    expect(brief.issues).toMatchObject([{ code: "window-without-date", severity: "warning" }]);
  });

  it("a time that is no number is the caller's mistake", () => {
    expect(() => resolved("course: 218, to: EAST", Number.NaN)).toThrow(RangeError);
  });
});

describe("a GPX route as a brief", () => {
  const point = (ident: string, latitude: number) => ({ ident, latitude, longitude: 172.3, altitude: null });

  it("has a leg between each two points, with a full scale of 1 NM", () => {
    const points = [point("TARNO", 35.6), point("", 35.7), point("KESTI", 35.8)];
    const brief = resolveBrief(briefFromRoute({ name: "Out", points }, "r.gpx"), { time: TIME });
    expect(brief).toMatchObject({ title: "Out", source: "gpx-route", issues: [] });
    expect(brief.exercises.map((e) => [e.index, e.title])).toEqual([
      [0, "Leg TARNO to Point 2"],
      [1, "Leg Point 2 to KESTI"],
    ]);
    expect(brief.exercises[0]).toMatchObject({ kind: "course", form: "leg", scale: { id: "rnav-1" } });
  });

  it("a point given twice makes no leg and is an issue", () => {
    const points = [point("TARNO", 35.6), point("TARNO", 35.6), point("KESTI", 35.8)];
    const draft = briefFromRoute({ name: "", points }, "r.gpx");
    expect(draft.title).toBe("r.gpx");
    expect(draft.exercises).toHaveLength(1);
    expect(draft.issues).toMatchObject([{ code: "route-leg-without-length", facts: { from: "TARNO" } }]);
  });

  it.each([[[]], [[point("TARNO", 35.6)]], [[point("A", 35.6), point("B", 35.6)]]])(
    "a route without legs is unusable",
    (points) => {
      expect(() => briefFromRoute({ name: "x", points }, "r.gpx")).toThrow(UnusableInput);
    },
  );
});
