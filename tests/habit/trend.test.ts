/** Trends and false discoveries against SciPy and published examples. */
import { describe, expect, it } from "vitest";
import { falseDiscoveryShares } from "../../src/habit/discoveries.ts";
import { mannKendall, theilSen } from "../../src/habit/trend.ts";
import { normalCdf } from "../../src/quantity/normal.ts";
import { near } from "../support/near.ts";
import { reference } from "./reference.ts";

const dated = (y: readonly number[], first = 0) => y.map((value, i) => ({ at: first + i, value }));

describe("trend", () => {
  it.each(reference.trends)("SciPy: Theil and Sen's slope and line, Kendall's S and its chances", (t) => {
    const line = theilSen(dated(t.y))!;
    near(line.slope, t.slope, 1e-12);
    near(line.from, t.intercept, 1e-12);
    const { s, variance, p } = mannKendall(t.y);
    expect(s).toBe(t.s);
    if (t.exactP !== null) near(p, t.exactP, 1e-12);
    else near(p, 2 * (1 - normalCdf((Math.abs(s) - 1) / Math.sqrt(variance))), 1e-12);
    // SciPy's normal limit has no correction for continuity; its variance with ties is the same
    near(2 * (1 - normalCdf(Math.abs(s) / Math.sqrt(variance))), t.asymptoticP, 2e-7);
  });

  // Hollander, Wolfe, Nonparametric Statistical Methods (1973), example 9.1 (Theil), from memory: cloud seeding
  it("Hollander and Wolfe, example 9.1: slope -0.056, chance of C = -6 with 5 values 0.117 to one side", () => {
    const rain = [1.26, 1.27, 1.12, 1.16, 1.03];
    near(theilSen(dated(rain, 1))!.slope, -0.056, 5e-4);
    const { s, p } = mannKendall(rain);
    expect(s).toBe(-6);
    near(p / 2, 0.117, 5e-4);
  });

  // Hollander, Wolfe (1973), table A.21 (Kendall's K), from memory
  it.each([
    [4, 6, 0.042],
    [5, 8, 0.042],
    [6, 11, 0.028],
    [8, 16, 0.031],
  ])("table of Kendall's K: of %i values at least %i with chance %f", (n, k, chance) => {
    // an order with that K: all rising but for so many neighbours exchanged
    const order = Array.from({ length: n }, (_, i) => i);
    for (let swaps = ((n * (n - 1)) / 2 - k) / 2, at = 0; swaps > 0; swaps--, at++) {
      const i = order.findIndex((v, j) => j >= at % (n - 1) && v < (order[j + 1] ?? -1));
      [order[i], order[i + 1]] = [order[i + 1]!, order[i]!];
    }
    const { s, p } = mannKendall(order);
    expect(s).toBe(k);
    near(p / 2, chance, 6e-4);
  });

  it("says nothing of values that are all the same", () => {
    expect(mannKendall([2, 2, 2, 2, 2]).p).toBe(1);
    expect(theilSen([{ at: 1, value: 2 }])).toBeNull();
  });
});

describe("false discoveries", () => {
  it.each(reference.falseDiscoveries)(
    "SciPy: adjusted p-values of Benjamini and Hochberg",
    ({ p, adjusted }) => {
      expect(p.length).toBe(adjusted.length);
      for (const [i, share] of falseDiscoveryShares(p).entries()) near(share, adjusted[i]!, 1e-12);
    },
  );

  // Benjamini, Hochberg, J. R. Statist. Soc. B 57 (1995), section 4.1, from memory: thrombolysis, 15 comparisons
  it("Benjamini and Hochberg's example: four of fifteen at 0.05", () => {
    const p = [
      ...[0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262],
      ...[0.5719, 0.6528, 0.759, 1],
    ];
    expect(falseDiscoveryShares(p).filter((share) => share <= 0.05)).toHaveLength(4);
  });

  it("has nothing to say of nothing", () => expect(falseDiscoveryShares([])).toEqual([]));
});
