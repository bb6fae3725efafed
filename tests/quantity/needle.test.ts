/** What a needle shows of a distance off course. */
import { describe, expect, it } from "vitest";
import { acrossAt, needleOf } from "../../src/quantity/needle.ts";
import { NEEDLE_SCALES } from "../../src/standard/needle.ts";
import { near } from "../support/near.ts";

const { vor, "rnav-1": rnav1, localizer } = NEEDLE_SCALES;

describe("needle", () => {
  it("FAA-H-8083-15 VOR chapter, from memory: one dot of 2° is about 200 ft a mile, so 1 NM at 30 NM and 2 NM at 60 NM", () => {
    // "About": the rule of thumb is 5 % short of the tangent of 2°.
    near(needleOf(vor, 1, 30) * 5, 1, 0.06, "dots");
    near(needleOf(vor, 2, 60) * 5, 1, 0.06, "dots");
    near(acrossAt(vor, 1 / 5, 30), 1, 0.06, "NM");
  });

  it("FAA AIM 1-1-17: one mile is full scale on the terminal scale, at any distance", () => {
    for (const distance of [0, 1, 30]) {
      expect(needleOf(rnav1, 1, distance)).toBe(1);
      expect(acrossAt(rnav1, 1, distance)).toBe(1);
    }
    expect(needleOf(rnav1, -0.5, 10)).toBe(-0.5);
  });

  it("grows toward the station for the same distance off course (geometry)", () => {
    expect(needleOf(vor, 0.25, 2)).toBeGreaterThan(needleOf(vor, 0.25, 10) * 4.5);
  });

  it("full scale of a 2.5° localizer 10 NM out is 10 tan 2.5° = 0.4366 NM either way from it (table of tangents)", () => {
    near(acrossAt(localizer, 1, 10), 0.4366, 0.00005, "NM");
    near(acrossAt(localizer, -1, -10), -0.4366, 0.00005, "NM");
    near(needleOf(localizer, 0.4366, -10), 1, 0.0002, "of full scale");
  });
});
