/** The bootstrap over flights: drawn whole, with replacement, the same draw every time. */

/** Efron, Tibshirani (1993), 6.4: 200 are enough for a standard error. Few flights get more, for a steadier answer at no cost. */
const REPLICATES = 1000;
const REPLICATES_OF_MANY = 200;
const MANY = 100;
const SEED = 20_261_017;

/** Uniform, [0, 1): mulberry32 (T. Ettinger, public domain), from memory. Good enough to draw flights. */
function uniformFrom(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A statistic of the values of flights drawn with replacement, as many as there are, so many times.
 * Source: B. Efron, R. J. Tibshirani, *An Introduction to the Bootstrap* (1993), ch. 6; whole clusters: A. C. Davison,
 * D. V. Hinkley, *Bootstrap Methods and their Application* (1997), 3.8. The same input gives the same draws.
 */
export function clusterBootstrap(
  clusters: readonly (readonly number[])[],
  statistic: (sample: Float64Array) => number,
  replicates = clusters.length > MANY ? REPLICATES_OF_MANY : REPLICATES,
  seed = SEED,
): Float64Array {
  const uniform = uniformFrom(seed);
  const largest = clusters.reduce((most, c) => Math.max(most, c.length), 0);
  const room = new Float64Array(largest * clusters.length);
  const drawn = new Float64Array(replicates);
  for (let r = 0; r < replicates; r++) {
    let length = 0;
    for (let k = 0; k < clusters.length; k++) {
      const cluster = clusters[Math.floor(uniform() * clusters.length)]!;
      for (let i = 0; i < cluster.length; i++) room[length++] = cluster[i]!;
    }
    drawn[r] = statistic(room.subarray(0, length));
  }
  return drawn;
}

/** The standard deviation of the replicates. */
export function standardError(replicates: Float64Array): number {
  const n = replicates.length;
  const mean = replicates.reduce((a, b) => a + b, 0) / n;
  return Math.sqrt(replicates.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1));
}
