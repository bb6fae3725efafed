/** Whether something grows or shrinks from flight to flight, and by how much, whatever its distribution. */
import { normalCdf } from "../quantity/normal.ts";
import type { Share } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";

export interface Dated {
  /** The flight, counted. */
  readonly at: number;
  readonly value: number;
}

export interface Line {
  readonly slope: number;
  /** The value at 0. */
  readonly from: number;
}

/**
 * The median of the slopes between all pairs, and the line of that slope with as many values above it as below.
 * Source: P. K. Sen, *Estimates of the Regression Coefficient Based on Kendall's Tau*, J. Amer. Statist. Assoc. 63 (1968)
 * 1379-1389. Null where no two differ in time.
 */
export function theilSen(points: readonly Dated[]): Line | null {
  const pairs = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  for (let i = 0; i < points.length; i++) {
    const { at, value } = points[i]!;
    for (let j = i + 1; j < points.length; j++) {
      const time = points[j]!.at - at;
      if (time !== 0) pairs[count++] = (points[j]!.value - value) / time;
    }
  }
  if (count === 0) return null;
  const slope = median(pairs.subarray(0, count));
  return { slope, from: median(Float64Array.from(points, (p) => p.value - slope * p.at)) };
}

/**
 * Whether the line ends nearer to 0 than it began, over these flights. Null where it begins on one side and ends on the
 * other, unless one end alone is small: who goes from far right to far left has unlearnt nothing.
 */
export function endsNearer({ slope, from }: Line, at: readonly number[], small: number): boolean | null {
  const [first, last] = [from + slope * Math.min(...at), from + slope * Math.max(...at)];
  if (first * last < 0 && Math.abs(first) <= small === Math.abs(last) <= small) return null;
  return Math.abs(last) < Math.abs(first);
}

/** Up to so many values without ties every order is counted; beyond, the normal limit is as good (Kendall 1975). */
const COUNTED_UP_TO = 10;

/** The chance that |S| of so many values in random order is at least this: orders counted by their inversions. */
function chanceOfOrder(n: number, size: number): Share {
  let ways = [1];
  for (let k = 2; k <= n; k++) {
    const next = new Array<number>(ways.length + k - 1).fill(0);
    ways.forEach((w, i) => {
      for (let j = 0; j < k; j++) next[i + j]! += w / k;
    });
    ways = next;
  }
  const pairs = (n * (n - 1)) / 2;
  return ways.reduce((sum, w, inversions) => sum + (Math.abs(pairs - 2 * inversions) >= size ? w : 0), 0);
}

export interface MannKendall {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  /** Of S, with ties, under no trend. */
  readonly variance: number;
  /** Two-sided: the chance of an S as far from 0 without a trend. */
  readonly p: Share;
}

/**
 * The test for a trend of values in their order. Source: R. O. Gilbert, *Statistical Methods for Environmental Pollution
 * Monitoring* (1987), 16.4: exact for up to 10 values without ties, else normal with the correction for ties and continuity.
 */
export function mannKendall(values: readonly number[]): MannKendall {
  const n = values.length;
  let s = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) s += Math.sign(values[j]! - values[i]!);
  const times = new Map<number, number>();
  for (const v of values) times.set(v, (times.get(v) ?? 0) + 1);
  const spread = (t: number) => t * (t - 1) * (2 * t + 5);
  const ties = [...times.values()].reduce((sum, t) => sum + spread(t), 0);
  const variance = (spread(n) - ties) / 18;
  if (s === 0 || !(variance > 0)) return { s, variance, p: 1 };
  if (n <= COUNTED_UP_TO && ties === 0) return { s, variance, p: chanceOfOrder(n, Math.abs(s)) };
  return { s, variance, p: 2 * (1 - normalCdf((Math.abs(s) - 1) / Math.sqrt(variance))) };
}
