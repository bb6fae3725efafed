/** True less variation is magnetic, east positive: variation east is least, west is best (common practice, no source). */
import { expect, it } from "vitest";
import {
  compassVariation,
  magneticCourse,
  magneticHeading,
  UNKNOWN_VARIATION,
  type VariationUsed,
} from "../../src/quantity/magnetic.ts";

const OLD_STATION: VariationUsed = { degrees: 8, from: "station", model: null, dayDegrees: -3 };

it("a course is by the station, a heading by the compass", () => {
  expect(magneticCourse(5, OLD_STATION)).toBe(357);
  expect(magneticHeading(358, OLD_STATION)).toBe(1);
});

it("where none is known nothing is called magnetic", () => {
  expect(magneticCourse(5, UNKNOWN_VARIATION)).toBeNull();
  expect(magneticHeading(5, UNKNOWN_VARIATION)).toBeNull();
  expect(magneticHeading(5)).toBeNull();
});

it("documents of earlier versions have no variation of the day: the station's stands for it", () => {
  const { dayDegrees: _, ...earlier } = OLD_STATION;
  expect(compassVariation(earlier)).toBe(8);
  expect(magneticHeading(5, earlier)).toBe(357);
  expect(compassVariation({ degrees: 0, from: "unknown", model: null })).toBeNull();
});
