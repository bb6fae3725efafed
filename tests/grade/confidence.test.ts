import { describe, expect, it } from "vitest";
import { confidenceBelow, confidenceWithin } from "../../src/grade/confidence.ts";
import { judge } from "../../src/grade/criterion.ts";
import { normalCdf } from "../../src/quantity/normal.ts";
import { TEST_STANDARDS } from "../../src/standard/tolerance.ts";
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
  it("a limit to both sides is passed to either: on the middle, one standard deviation to each side holds 68 %", () => {
    // Abramowitz, Stegun, table 26.1: 2 P(1) - 1, 2 P(1.645) - 1 (from memory)
    near(confidenceWithin(0, 1.96, 1), 0.682689492, 1e-7, "");
    near(confidenceWithin(0, 1.96 / 1.645, 1), 0.900030188, 1e-7, "");
    near(confidenceWithin(-0.5, 1.96, 1), confidenceWithin(0.5, 1.96, 1), 1e-12, "");
  });
  it("a limit to one side is not passed to the other", () => {
    near(confidenceBelow(0, 1.96 / 1.645, 1), 0.950015094, 1e-7, "");
    near(confidenceBelow(-3, 1.96, 0), 0.998650102, 1e-7, "");
    expect(confidenceBelow(-3, 0, 0)).toBe(1);
  });
});

describe("by construction: verdicts on a needle in the middle whose doubt is nearly the whole limit", () => {
  const standard = TEST_STANDARDS[0]!;
  const verdict = (sides: { oneSided?: true }, doubt95 = 1.19) =>
    judge(
      [
        {
          ...({ id: "x", title: "X", unit: "share" } as const),
          limit: () => ({ limit: 1, edge: "within", citation: "by construction" }),
          find: () => ({ value: 0, ...sides, doubt95, beyond: null, worstUtc: null }),
        },
      ],
      {},
      standard,
    )[0]!;
  it("cannot be told where both sides are out, met where one is", () => {
    expect(verdict({}).verdict).toBe("cannot tell");
    near(verdict({}).confidence!, 0.9, 0.001, "");
    expect(verdict({ oneSided: true }).verdict).toBe("met");
  });
  it("a doubt many times the limit proves nothing, though little of it lies inside", () => {
    expect(verdict({}, 100)).toMatchObject({ verdict: "cannot tell" });
    expect(verdict({}, 100).confidence!).toBeLessThan(0.05);
  });
});
