import { describe, expect, it } from "vitest";
import { groundOf, headingForCourse, windBetween, windComponents, windOfAir } from "../../src/wind/index.ts";
import { near, nearDirection } from "../support/near.ts";
import truth from "../truth/wind-triangles.json" with { type: "json" };

const wind = ([from, speed]: number[]) => ({ from: from!, speed: speed! });

describe("heading and ground speed for a course", () => {
  it.each(truth.headings)("$from", (row) => {
    const found = headingForCourse(row.course, row.tas, wind(row.wind))!;
    nearDirection(found.heading, row.heading, 1);
    near(found.groundSpeed, row.groundSpeed, 1, "kt");
    nearDirection(found.heading, row.course + found.correction, 1e-9);
  });

  it("has no answer where the crosswind is stronger than the airspeed, or the headwind", () => {
    expect(headingForCourse(0, 50, { from: 90, speed: 60 })).toBeNull();
    expect(headingForCourse(0, 50, { from: 0, speed: 60 })).toBeNull();
  });
});

describe("track and ground speed of a heading", () => {
  it.each(truth.tracks)("$from", (row) => {
    const found = groundOf({ heading: row.heading, trueAirspeed: row.tas }, wind(row.wind))!;
    if (row.track !== null) nearDirection(found.trackAngle, row.track, row.exact ? 0.06 : 1);
    near(found.groundSpeed, row.groundSpeed, row.exact ? 0.006 : 1, "kt");
  });

  it("drifts 14 degrees left as in War Department, Mathematics for Air Crew Trainees, figure 55 (heading 056, course 042)", () => {
    const w = windBetween({ heading: 56, trueAirspeed: 150 }, { trackAngle: 42, groundSpeed: 150 });
    near(groundOf({ heading: 56, trueAirspeed: 150 }, w)!.drift, -14, 1e-9, "deg");
  });
});

describe("wind between an air and a ground vector", () => {
  it.each(truth.winds)("$from", (row) => {
    const found = windBetween(
      { heading: row.heading, trueAirspeed: row.tas },
      { trackAngle: row.track, groundSpeed: row.groundSpeed },
    );
    nearDirection(found.from, row.wind[0]!, 1);
    near(found.speed, row.wind[1]!, 1, "kt");
  });
});

describe("Aviation Formulary V1.47, head- and crosswind components", () => {
  it("splits 060/20 on runway 030 into 17.32 head and 10 from the right", () => {
    const { headwind, fromRight } = windComponents({ from: 60, speed: 20 }, 30);
    near(headwind, 17.32, 0.005, "kt");
    near(fromRight, 10, 1e-9, "kt");
  });
});

it("names the wind from where the air comes", () => {
  expect(windOfAir(10, 0)).toEqual({ from: 270, speed: 10 });
  expect(windOfAir(0, 0)).toEqual({ from: 0, speed: 0 });
});
