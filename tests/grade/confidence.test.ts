import { describe, expect, it } from "vitest";
import { confidenceWithin } from "../../src/grade/confidence.ts";
import { normalCdf } from "../../src/quantity/normal.ts";
import { near } from "../support/near.ts";

describe("Abramowitz, Stegun, Handbook of Mathematical Functions (1964), table 26.1 (from memory): normal probability", () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746],
    [1.96, 0.975002105],
    [2, 0.977249868],
    [-1.645, 0.049984906],
    [3, 0.998650102],
  ])("P(%s) is %s within 1e-7", (z, p) => near(normalCdf(z), p, 1e-7, ""));
});

describe("by construction: how sure a value is to lie within its limit", () => {
  it("half its doubt inside or outside the limit is no certainty, the one-sided 95 % point is", () => {
    near(confidenceWithin(0.75, 0.1, 0.75), 0.5, 1e-7, "");
    const sd = 0.1 / 1.96;
    near(confidenceWithin(0.75 - 1.6449 * sd, 0.1, 0.75), 0.95, 1e-4, "");
    near(confidenceWithin(0.75 + 1.6449 * sd, 0.1, 0.75), 0.05, 1e-4, "");
  });
  it("an exact value is within at its limit", () => {
    expect(confidenceWithin(0.75, 0, 0.75)).toBe(1);
    expect(confidenceWithin(0.76, 0, 0.75)).toBe(0);
  });
});
