/** The statistics of habits against printed values, SciPy and simple-statistics. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { median as libraryMedian, mean, medianAbsoluteDeviation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { clusterBootstrap, standardError } from "../../src/habit/bootstrap.ts";
import { falseDiscoveryShares } from "../../src/habit/discoveries.ts";
import { huberMean, robustMean, robustSpread } from "../../src/habit/robust-mean.ts";
import { studentBeyond, studentWithin } from "../../src/habit/student.ts";
import { mannKendall, theilSen } from "../../src/habit/trend.ts";
import { normalCdf } from "../../src/quantity/normal.ts";
import { seeded } from "../support/flown.ts";
import { near } from "../support/near.ts";

interface Reference {
  readonly trends: readonly {
    readonly y: readonly number[];
    readonly slope: number;
    readonly intercept: number;
    readonly s: number;
    readonly exactP: number | null;
    readonly asymptoticP: number;
  }[];
  readonly falseDiscoveries: readonly {
    readonly p: readonly number[];
    readonly adjusted: readonly number[];
  }[];
  readonly student: readonly { readonly t: number; readonly df: number; readonly within: number }[];
  readonly huber: readonly {
    readonly values: readonly number[];
    readonly spread: number;
    readonly mean: number;
  }[];
}
/** Source and date stand in the file. */
const reference: Reference = JSON.parse(
  readFileSync(join(import.meta.dirname, "../truth/habit-statistics.json"), "utf8"),
);
const dated = (y: readonly number[], first = 0) => y.map((value, i) => ({ at: first + i, value }));

describe("Student's distribution", () => {
  it.each(reference.student)("SciPy: within $t with $df degrees of freedom", ({ t, df, within }) =>
    near(studentWithin(t, df), within, 1e-12),
  );

  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, column 0.975
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [9, 2.262],
    [19, 2.093],
    [30, 2.042],
    [100, 1.984],
  ])("NIST table: %i degrees of freedom, 95 %% within %f", (df, t) => near(studentBeyond(0.05, df), t, 5e-4));

  it("refuses degrees of freedom that are none", () => {
    expect(() => studentWithin(1, 0)).toThrow(RangeError);
    expect(() => studentWithin(1, 1.5)).toThrow(RangeError);
  });
});

describe("robust mean", () => {
  it.each(reference.huber)(
    "SciPy: the root of Huber's equation, and the spread",
    ({ values, spread, mean: root }) => {
      const column = Float64Array.from(values);
      near(robustSpread(column), spread, 1e-12);
      near(huberMean(column, spread), root, 2e-6 * spread);
    },
  );

  it("simple-statistics: the spread is 1.4826 times the median absolute deviation", () => {
    const { normal } = seeded(5);
    const values = Array.from({ length: 31 }, normal);
    near(robustSpread(Float64Array.from(values)), 1.4826 * medianAbsoluteDeviation(values), 1e-12);
  });

  it("a single wild exercise moves it by less than its reach, a mean by all of it", () => {
    const flights = [
      [0, 0.1],
      [-0.1, 0],
      [0.1, 0.2],
      [0, -0.2],
      [0.05, 50],
    ].map((f) => f.map((value) => ({ value, doubt95: 0 })));
    expect(Math.abs(robustMean(flights).mean)).toBeLessThan(0.2);
  });

  it("is never surer than the doubt of its values", () => {
    const flights = Array.from({ length: 5 }, () => [{ value: 0, doubt95: 0.5 }]);
    // 0.5 / 1.96 / sqrt(5), times Student's 2.776 for 4 degrees of freedom
    const { mean: middle, high95 } = robustMean(flights);
    near(middle, 0, 1e-12);
    near(high95, (2.776 * 0.5) / 1.96 / Math.sqrt(5), 1e-3);
  });

  it("needs two flights", () => expect(() => robustMean([[{ value: 1, doubt95: 0 }]])).toThrow(RangeError));
});

describe("bootstrap", () => {
  // Efron, Tibshirani, An Introduction to the Bootstrap (1993), tables 2.1 and 2.2, from memory: the treated mice
  const mice = [94, 197, 16, 38, 99, 141, 23];
  const alone = mice.map((v) => [v]);

  it("Efron and Tibshirani, table 2.2: standard error of the mean of 7 mice, 23.36 in the limit", () => {
    const drawn = clusterBootstrap(alone, (sample) => mean([...sample]), 20_000);
    near(standardError(drawn), 23.36, 0.35); // 2 standard errors of 20,000 replicates
  });

  it("Efron and Tibshirani, table 2.2: of their median, 37.83 in the limit", () => {
    const drawn = clusterBootstrap(alone, (sample) => libraryMedian([...sample]), 20_000);
    near(standardError(drawn), 37.83, 0.6);
  });

  it("draws flights whole: pairs that say the same twice are no better known than once", () => {
    const twice = clusterBootstrap(
      mice.map((v) => [v, v]),
      (sample) => mean([...sample]),
      20_000,
    );
    near(standardError(twice), 23.36, 0.35);
  });

  it("draws the same every time", () => {
    const draw = () => clusterBootstrap(alone, (sample) => mean([...sample]), 50);
    expect(draw()).toEqual(draw());
  });

  it("intervals of few flights hold the mean as often as they say (normal flights, 2 exercises each)", () => {
    const { normal } = seeded(17);
    for (const flights of [3, 5, 10]) {
      let held = 0;
      const times = 600;
      for (let k = 0; k < times; k++) {
        const flown = Array.from({ length: flights }, () => {
          const day = 0.5 * normal();
          return [day + 0.3 * normal(), day + 0.3 * normal()].map((value) => ({ value, doubt95: 0 }));
        });
        const { low95, high95 } = robustMean(flown);
        if (low95 <= 0 && high95 >= 0) held++;
      }
      // 3 standard errors of 600 draws about 0.95
      near(held / times, 0.95, 0.03, "", `${flights} flights`);
    }
  });
});

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
