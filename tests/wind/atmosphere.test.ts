import { describe, it } from "vitest";
import { trueOverEquivalent } from "../../src/wind/atmosphere.ts";
import { near } from "../support/near.ts";

describe("U.S. Standard Atmosphere 1976, density ratios of the tables (from memory)", () => {
  it.each([
    [0, 1],
    [5000, 0.8617],
    [10000, 0.7385],
    [20000, 0.5328],
    [30000, 0.3741],
    [40000, 0.2462],
  ])("at %s ft is %s", (altitude, ratio) => {
    // printed to four digits
    near(1 / trueOverEquivalent(altitude) ** 2, ratio, 0.00006);
  });
});
