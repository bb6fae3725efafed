import { expect, it } from "vitest";
import { climbedOf } from "../../src/wind/heights.ts";

it("counts a climb step by step, a held height as none, an unknown one as held (by construction)", () => {
  const altitude = Float64Array.from([3000, 3050, 2950, 3300, Number.NaN, 3900, 4500, 4450, 4000]);
  expect([...climbedOf(altitude, altitude.length)]).toEqual([0, 0, 0, 300, 0, 600, 600, 0, 500]);
});
