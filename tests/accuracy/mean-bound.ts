/** The bound on the mean wind of a flight, worked out in one piece from the covariances of all its facts: independent of the filter. */
import type { FactSmoother } from "../../src/wind/filter.ts";
import type { Belief } from "../../src/wind/state.ts";

/**
 * Variance of the vector, kt2, of the mean wind under `weights`, given the facts with the noses of the smoother: what
 * is believed of it less what the facts explain, C - c'(S + R)^-1 c for jointly normal quantities (any textbook).
 */
export function meanBound(smoother: FactSmoother, belief: Belief, weights: readonly number[]): number {
  const { facts, noseEast: u, noseNorth: v } = smoother;
  const { count: n, seconds, thousands, wanderShare, growth } = facts;
  const walked = new Float64Array(n);
  for (let i = 1; i < n; i++) walked[i] = walked[i - 1]! + facts.levelStep[i]!;
  const apart = (i: number, j: number) => Math.abs(seconds[i]! - seconds[j]!);
  const wind = (i: number, j: number) =>
    belief.variance[0]! +
    belief.windWander ** 2 * Math.exp(-apart(i, j) / belief.windSeconds) +
    belief.variance[7]! * thousands[i]! * thousands[j]!;
  const speed = (i: number, j: number) =>
    growth[i]! * growth[j]! * (belief.variance[4]! + walked[Math.min(i, j)]!) +
    wanderShare[i]! *
      wanderShare[j]! *
      belief.airspeedWander ** 2 *
      Math.exp(-apart(i, j) / belief.airspeedSeconds);
  const lower = new Float64Array(n * n);
  const withMean = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const w = wind(i, j);
      withMean[i] = withMean[i]! + weights[j]! * w;
      lower[i * n + j] = (u[i]! * u[j]! + v[i]! * v[j]!) * w + speed(i, j);
    }
    lower[i * n + i] = lower[i * n + i]! + facts.noise[i]!;
  }
  cholesky(lower, n);
  const prior = weights.reduce((sum, w, i) => sum + w * withMean[i]!, 0);
  const explained = [u, v].map((nose) => {
    const x = withMean.map((c, i) => c * nose[i]!);
    let sum = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) x[i] = x[i]! - lower[i * n + j]! * x[j]!;
      x[i] = x[i]! / lower[i * n + i]!;
      sum += x[i]! ** 2;
    }
    return sum;
  });
  return 2 * prior - explained[0]! - explained[1]!;
}

/** A = L L', L in place of the lower triangle. */
function cholesky(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(sum) : sum / a[j * n + j]!;
    }
  }
}
