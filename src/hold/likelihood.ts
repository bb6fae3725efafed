/** How likely a value is if it was meant, against anything by chance: densities, and groups about their own middle. */
import type { Share } from "../quantity/units.ts";

/** What nobody planned is anywhere within so many seconds of flight, and degrees. Chosen. */
export const CHANCE_SECONDS = 160;
export const CHANCE_DEGREES = 180;
/** Share of the well watched, well joined. Chosen. */
export const WELL: Share = 0.6;

/** Student's t of 3 degrees, a density: a few wild values do not decide. */
export const student = (x: number, sd: number): number => 0.3676 / sd / (1 + (x / sd) ** 2 / 3) ** 2;

/** The same about a usual value. */
export const about = (x: number, [usual, sd]: readonly [number, number]): number => student(x - usual, sd);

/** Log density of values about their middle, which itself is anywhere. */
export function together(off: readonly number[], density: (x: number) => number, chance: number): number {
  const n = off.length;
  if (n === 0) return 0;
  const sum = off.reduce((s, x) => s + Math.log(density(x)), 0);
  return (n > 1 ? (sum * (n - 1)) / n : 0) - Math.log(chance);
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
