/** What the facts from one on say of the state there, as information and gradient: the backward smoother with the prediction taken out. */
import type { FactSmoother } from "./filter.ts";
import { apply, solve, times } from "./matrix.ts";
import { N } from "./state.ts";

/** Cost of a state that differs by d from the filter's own prediction: d'Jd / 2 + g'd. */
export interface Later {
  readonly information: Float64Array;
  readonly gradient: Float64Array;
}

/** Of the facts from `after` on, by the last pass; null where it cannot be told. */
export function laterFacts(smoother: FactSmoother, after: number): Later | null {
  const own = smoother.predictedCovariance.subarray(after * N * N, (after + 1) * N * N);
  const m = smoother.adjointMatrix.subarray(after * N * N, (after + 1) * N * N);
  const l = smoother.adjoint.subarray(after * N, (after + 1) * N);
  // M = J (I + P J)^-1 and l = (I + J P)^-1 g, so that J = (I - M P)^-1 M and g = l + J P l
  const left = times(m, own, N);
  for (let a = 0; a < N * N; a++) left[a] = (a % (N + 1) === 0 ? 1 : 0) - left[a]!;
  const information = solve(left, m, N);
  if (!information) return null;
  const carried = apply(information, apply(own, l, N), N);
  return { information, gradient: carried.map((v, a) => v + l[a]!) };
}

/** Covariance of a state of covariance p that learns what the later facts say: (P^-1 + J)^-1; null where it cannot be told. */
export function withLater(p: Float64Array, { information }: Later): Float64Array | null {
  const system = times(p, information, N);
  for (let a = 0; a < N; a++) system[a * N + a] = system[a * N + a]! + 1;
  return solve(system, p, N);
}
