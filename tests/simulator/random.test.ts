/** The generator, and the noise made of it. */
import { describe, expect, it } from "vitest";
import { gaussMarkov } from "../../src/simulator/gauss-markov.ts";
import { draw, randomStream, xoshiro128 } from "../../src/simulator/random.ts";
import { near } from "../support/near.ts";

describe("rand_xoshiro (Rust), test vector made with the authors' C code of xoshiro128**, from memory", () => {
  it("gives nine of the ten first words from the state 1, 2, 3, 4 (the fifth is not remembered for sure)", () => {
    const next = xoshiro128([1, 2, 3, 4]);
    const words = Array.from({ length: 10 }, next);
    expect(words.toSpliced(4, 1)).toEqual([
      11520, 0, 5927040, 70819200, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });
});

describe("by construction: streams of random numbers", () => {
  it("repeats itself for the same seed and name, and not for others", () => {
    const first = (seed: number, name: string) => {
      const r = randomStream(seed, name);
      return [r.uniform(), r.normal(), r.normal(), r.uniform()];
    };
    expect(first(7, "wind")).toEqual(first(7, "wind"));
    expect(first(7, "wind")).not.toEqual(first(8, "wind"));
    expect(first(7, "wind")).not.toEqual(first(7, "turns"));
    expect(first(2 ** 32, "wind")).not.toEqual(first(0, "wind"));
  });

  it("refuses a seed that is not a whole number", () => {
    expect(() => randomStream(0.5, "wind")).toThrow("invalid seed: 0.5");
    expect(() => randomStream(Number.NaN, "wind")).toThrow(RangeError);
  });

  it("draws from a range evenly, and the same again after a fixed value", () => {
    const random = randomStream(3, "draw");
    const drawn = Array.from({ length: 10_000 }, () => draw([5, 35], random));
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(5);
    expect(Math.max(...drawn)).toBeLessThan(35);
    near(drawn.reduce((a, b) => a + b) / drawn.length, 20, 4 * (30 / Math.sqrt(12) / 100), "", "mean");
    const a = randomStream(4, "draw");
    const b = randomStream(4, "draw");
    draw(1, a);
    draw([0, 9], b);
    expect(a.uniform()).toBe(b.uniform());
  });

  // Limits: four standard errors of each statistic for n independent normal values.
  it("makes normal numbers with the moments of the normal distribution", () => {
    const random = randomStream(1, "normal");
    const n = 100_000;
    let [m1, m2, m3, m4] = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      const x = random.normal();
      m1 += x / n;
      m2 += x ** 2 / n;
      m3 += x ** 3 / n;
      m4 += x ** 4 / n;
    }
    near(m1, 0, 4 * Math.sqrt(1 / n), "", "mean");
    near(m2, 1, 4 * Math.sqrt(2 / n), "", "variance");
    near(m3, 0, 4 * Math.sqrt(15 / n), "", "third moment");
    near(m4, 3, 4 * Math.sqrt(96 / n), "", "fourth moment");
  });
});

describe("Gelb 1974, Applied Optimal Estimation, section 3.8: first-order Gauss-Markov process (from memory)", () => {
  it("has the standard deviation that is asked for, and a correlation of 1/e after the correlation time", () => {
    const step = 0.5;
    const time = 20;
    const next = gaussMarkov({ sd: 2, time }, step, randomStream(5, "process"));
    const n = 400_000;
    const lag = time / step;
    const x = Float64Array.from({ length: n }, next);
    let [mean, square, product] = [0, 0, 0];
    for (let i = 0; i < n; i++) {
      mean += x[i]! / n;
      square += x[i]! ** 2 / n;
      if (i >= lag) product += (x[i]! * x[i - lag]!) / (n - lag);
    }
    // about n * step / (2 time) = 5,000 independent values: four standard errors are 6 % of the sd, 0.06 of a correlation
    near(mean, 0, 0.12, "", "mean");
    near(Math.sqrt(square), 2, 0.12, "", "sd");
    near(product / square, Math.exp(-1), 0.06, "", "correlation");
  });

  it("refuses a size below zero and a time of zero", () => {
    const random = randomStream(1, "bad");
    expect(() => gaussMarkov({ sd: -1, time: 20 }, 1, random)).toThrow("invalid standard deviation: -1");
    expect(() => gaussMarkov({ sd: 1, time: 0 }, 1, random)).toThrow("invalid correlation time: 0");
  });
});
