/** The least error that any analysis could have had in the heights of simulated approaches: the receiver's slow height error leaves no more. */
import { normalCdf } from "../../src/quantity/normal.ts";
import { DRAWN_MODELS } from "../../src/simulator/index.ts";
import { draw, randomStream } from "../../src/simulator/random.ts";

export interface Bound {
  readonly rms: number;
  /** Share of flights within the target. */
  readonly within: number;
}

const FLIGHTS = 300;
const FINAL_M = 9260;
const MINIMUM_M = 870;
/** The simulated aircraft touches down 4 to 10 s after the threshold, and is logged for so long from there, s. */
const ROLL = { after: 7, over: 50 };
const PATH = (3 * Math.PI) / 180;

/**
 * Conditional variance of a weighted sum of a Gauss-Markov error given its values on the ground, there plus a constant
 * of unknown size (the datum): A. Gelb (ed.), *Applied Optimal Estimation* (1974), 3.8, and Gaussian conditioning.
 */
export function leftOver(
  weights: readonly number[],
  times: readonly number[],
  grounded: number,
  sd: number,
  time: number,
) {
  const covariance = (i: number, j: number) => sd ** 2 * Math.exp(-Math.abs(times[i]! - times[j]!) / time);
  const n = times.length;
  const DATUM = 1e6;
  const sum = weights.reduce((a, b) => a + b, 0);
  const covered = (j: number) => weights.reduce((s, w, i) => s + (w === 0 ? 0 : w * covariance(i, j)), 0);
  const variance = weights.reduce((s, w, j) => s + (w === 0 ? 0 : w * covered(j)), 0) + DATUM * sum ** 2;
  if (grounded === 0) return variance - DATUM * sum ** 2;
  const first = n - grounded;
  const rows = Array.from({ length: grounded }, (_, a) => [
    ...Array.from({ length: grounded }, (_, b) => covariance(first + a, first + b) + DATUM),
    covered(first + a) + DATUM * sum,
  ]);
  // Gaussian elimination: symmetric, positive definite
  for (let k = 0; k < grounded; k++)
    for (let r = k + 1; r < grounded; r++) {
      const factor = rows[r]![k]! / rows[k]![k]!;
      for (let c = k; c <= grounded; c++) rows[r]![c]! -= factor * rows[k]![c]!;
    }
  // after elimination the quadratic form is the sum of squares over the pivots
  const explained = rows.reduce((s, row, k) => s + row[grounded]! ** 2 / row[k]!, 0);
  return Math.max(0, variance - explained);
}

/** Angle of the line flown (target 0.05 degrees), and the passage of the minimum (2 s) with and without a roll on the runway. */
export function heightBounds(seed: number): { angleDeg: Bound; minimumTiedS: Bound; minimumUntiedS: Bound } {
  const random = randomStream(seed, "bound");
  const sums = { angle: [0, 0], tied: [0, 0], untied: [0, 0] };
  const add = (into: number[], sd: number, target: number) => {
    into[0]! += sd ** 2 / FLIGHTS;
    into[1]! += (2 * normalCdf(target / sd) - 1) / FLIGHTS;
  };
  for (let k = 0; k < FLIGHTS; k++) {
    const { sd: size, time: lasting } = DRAWN_MODELS.receiver.bias;
    const sd = 2 * draw(size as [number, number], random); // heights err twice as much
    const time = draw(lasting as [number, number], random);
    const along = draw([0, 30], random) * Math.cos(2 * Math.PI * random.uniform());
    const speed = (draw([90, 120], random) * draw([0.85, 1], random) + along) * 0.5144;
    const places = Array.from({ length: 40 }, (_, i) => FINAL_M + ((MINIMUM_M - FINAL_M) * i) / 39);
    const ground = Array.from({ length: 8 }, (_, i) => FINAL_M / speed + ROLL.after + (ROLL.over * i) / 7);
    const times = [...places.map((x) => (FINAL_M - x) / speed), ...ground];
    const mean = places.reduce((s, x) => s + x, 0) / places.length;
    const spread = places.reduce((s, x) => s + (x - mean) ** 2, 0);
    const slope = times.map((_, i) => (i < places.length ? (places[i]! - mean) / spread : 0));
    const last = times.map((_, i) => (i === places.length - 1 ? 1 : 0));
    const rate = speed * Math.tan(PATH);
    const angle = (Math.sqrt(leftOver(slope, times, ground.length, sd, time)) * 180) / Math.PI;
    add(sums.angle, angle, 0.05);
    add(sums.tied, Math.sqrt(leftOver(last, times, ground.length, sd, time)) / rate, 2);
    add(sums.untied, sd / rate, 2);
  }
  const bound = ([square, within]: number[]): Bound => ({ rms: Math.sqrt(square!), within: within! });
  return {
    angleDeg: bound(sums.angle),
    minimumTiedS: bound(sums.tied),
    minimumUntiedS: bound(sums.untied),
  };
}
