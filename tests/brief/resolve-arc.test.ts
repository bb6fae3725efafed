import { describe, expect, it } from "vitest";
import type { ArcExercise, DescentExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { near } from "../support/near.ts";

const TIME = Date.UTC(2026, 9, 17);

const resolved = (exercise: string, declination = "declination: 2.5", time: number | null = TIME) =>
  resolveBrief(
    readBrief(
      `brief: 1\nfixes: { TARNO: { lat: 35.6, lon: 172.3, kind: vor, ${declination} } }\nexercises:\n  - ${exercise}\n`,
      "test.yaml",
    ),
    { time },
  );
const arc = (exercise: string, declination?: string) =>
  resolved(exercise, declination).exercises[0] as ArcExercise;

describe("by construction: an arc of the brief", () => {
  it("has radials of its station: true by the station's own declination, true = magnetic + declination", () => {
    const exercise = arc("{ arc: TARNO, radius_nm: 10, from_radial: 300, to_radial: 350 }");
    expect(exercise).toMatchObject({
      kind: "arc",
      radius: 10,
      fromRadial: 302.5,
      toRadial: 352.5,
      fromMagnetic: 300,
      toMagnetic: 350,
      turns: "right",
      variation: { degrees: 2.5, from: "station" },
    });
    expect(exercise.fix.ident).toBe("TARNO");
  });

  it.each([
    ["the shorter way, clockwise", "from_radial: 300, to_radial: 350", "right"],
    ["the shorter way, anticlockwise", "from_radial: 350, to_radial: 300", "left"],
    ["the shorter way over north", "from_radial: 340, to_radial: 030", "right"],
    ["the longer way where the brief says so", "from_radial: 340, to_radial: 030, turns: left", "left"],
  ])("turns %s", (_, radials, turns) => {
    expect(arc(`{ arc: TARNO, radius_nm: 10, ${radials} }`).turns).toBe(turns);
  });

  it("a radial written true is left as it is, the other one is turned", () => {
    const exercise = arc("{ arc: TARNO, radius_nm: 10, from_radial: 300T, to_radial: 350 }");
    expect([exercise.fromRadial, exercise.toRadial]).toEqual([300, 352.5]);
    expect(exercise.fromMagnetic).toBe(297.5);
  });

  it("without a declination the model's variation turns it, about 2.6° east there in 2026", () => {
    const exercise = arc(
      "{ arc: TARNO, radius_nm: 10, from_radial: 300, to_radial: 350 }",
      "elevation_ft: 0",
    );
    expect(exercise.variation.from).toBe("model");
    near(exercise.toRadial - 350, exercise.variation.degrees, 1e-9, "°");
    near(exercise.fromRadial - 300, exercise.variation.degrees, 1e-9, "°");
  });

  it("is left out with an error where no variation fits the date, kept where both radials are written true", () => {
    const old = Date.UTC(1990, 0, 1);
    const magnetic = resolved(
      "{ arc: TARNO, radius_nm: 9, from_radial: 1, to_radial: 40 }",
      "elevation_ft: 0",
      old,
    );
    expect(magnetic.exercises).toEqual([]);
    expect(magnetic.issues.map((i) => i.code)).toEqual(["no-variation"]);
    const written = resolved(
      "{ arc: TARNO, radius_nm: 9, from_radial: 1T, to_radial: 40T }",
      "elevation_ft: 0",
      old,
    );
    expect(written.exercises[0]).toMatchObject({ fromRadial: 1, toRadial: 40, fromMagnetic: null });
  });
});

describe("by construction: a descent of the brief", () => {
  it("has its fix, its height and how far before the fix it is to be reached", () => {
    const exercise = resolved("{ descent: TARNO, to_ft: 1800, before_nm: 1 }")
      .exercises[0] as DescentExercise;
    expect(exercise).toMatchObject({ kind: "descent", toAltitude: 1800, before: 1, fix: { ident: "TARNO" } });
  });

  it("without a distance it is to be reached at the fix", () => {
    expect(resolved("{ descent: TARNO, to_ft: 1800 }").exercises[0]).toMatchObject({ before: 0 });
  });
});
