/** The statistics of habits against printed values, SciPy and simple-statistics. */
import {
  median as libraryMedian,
  mean,
  medianAbsoluteDeviation,
  rootMeanSquare,
  standardDeviation,
} from "simple-statistics";
import { describe, expect, it } from "vitest";
import { clusterBootstrap, standardError } from "../../src/habit/bootstrap.ts";
import { huberMean, robustMean, robustSpread } from "../../src/habit/robust-mean.ts";
import { studentBeyond, studentWithin } from "../../src/habit/student.ts";
import { seeded } from "../support/flown.ts";
import { near } from "../support/near.ts";
import { reference } from "./reference.ts";

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

  type Draw = (random: ReturnType<typeof seeded>) => number;
  /** So many pilots with so many flights of a kind, and the mean of 20,000 such flights. */
  function pilots(count: number, flights: number, draw: Draw, rare: boolean) {
    const random = seeded(4242 + flights);
    const flown = (n: number) => Array.from({ length: n }, () => [{ value: draw(random), doubt95: 0 }]);
    return {
      truth: robustMean(flown(20_000)).mean,
      means: Array.from({ length: count }, () => robustMean(flown(flights), rare)),
    };
  }

  it("knows how far its mean strays where values come in two sorts: corrected after one minute or after three", () => {
    const twoSorts: Draw = ({ uniform, normal }) =>
      uniform() < 0.5 ? 0.8 + 0.2 * normal() : 3.3 + 0.6 * normal();
    const { means } = pilots(600, 20, twoSorts, false);
    const strays = standardDeviation(means.map((m) => m.mean));
    const says = rootMeanSquare(means.map((m) => m.standardError));
    near(says / strays, 1, 0.1);
  });

  it("holds the mean of a fault that shows on one flight in twenty, also where none has shown it yet", () => {
    const { truth, means } = pilots(400, 10, ({ uniform }) => (uniform() < 0.05 ? 0.7 : 0), true);
    const held = means.filter(({ low95, high95 }) => low95 <= truth && truth <= high95).length;
    expect(held / means.length).toBeGreaterThan(0.92);
  });
});
