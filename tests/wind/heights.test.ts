import { expect, it } from "vitest";
import { climbsOf } from "../../src/wind/heights.ts";

it("counts a climb by its whole extent, a held height as none, an unknown one as held (by construction)", () => {
  const altitude = Float64Array.from([3000, 3050, 2950, 3300, Number.NaN, 3900, 4500, 4450, 4000]);
  const { climbed, extent } = climbsOf(altitude, altitude.length);
  expect([...climbed]).toEqual([0, 0, 0, 300, 0, 600, 600, 0, 500]);
  expect([...extent]).toEqual([0, 0, 0, 1500, 0, 1500, 1500, 0, 500]);
});
