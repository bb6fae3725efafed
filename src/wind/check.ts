/**
 * Does the flight agree with itself? Each turn is left out, the wind in it predicted from all the rest, and compared.
 *
 * A change of airspeed inside a turn looks just like wind. One turn cannot tell them apart; several can.
 * Leaving out needs no new solution: the forward filter before the turn and the backward smoother after it together
 * are the answer without it.
 */
import { type Belief, type FactSmoother, N } from "./filter.ts";
import { apply, solve, times } from "./matrix.ts";

export interface TurnCheck {
  /** First fact of the turn and first fact after it. */
  readonly first: number;
  readonly after: number;
  /** Mean square of the normalised difference over the two components of the wind: 1 where the doubts are right. */
  readonly statistic: number;
  /** Standard deviation along the worse axis of the wind predicted without the turn, kt. */
  readonly without: number;
}

/** A difference of less than this is never held against a turn, kt. */
const GRACE = 0.7;

/** Compares a run of facts [first, after) with all others; null where there is nothing on one side to compare with. */
export function checkRun(
  smoother: FactSmoother,
  belief: Belief,
  first: number,
  after: number,
): TurnCheck | null {
  const { facts, predicted, predictedCovariance, adjoint, adjointMatrix, state } = smoother;
  const last = after - 1;
  // forward to the last fact of the run, measuring nothing in it
  const x = predicted.slice(first * N, first * N + N);
  const p = predictedCovariance.slice(first * N * N, (first + 1) * N * N);
  for (let i = first + 1; i <= last; i++) smoother.step(belief, i, x, p);
  let cavity: Float64Array = p;
  let mean: Float64Array = x;
  if (after < facts.count) {
    smoother.step(belief, after, x, p);
    // what the later facts say at `after`: information J and its gradient j about the filter's own prediction there
    const own = predictedCovariance.subarray(after * N * N, (after + 1) * N * N);
    const m = adjointMatrix.subarray(after * N * N, (after + 1) * N * N);
    const l = adjoint.subarray(after * N, (after + 1) * N);
    const left = times(m, own, N);
    for (let a = 0; a < N * N; a++) left[a] = (a % (N + 1) === 0 ? 1 : 0) - left[a]!;
    const information = solve(left, m, N);
    if (!information) return null;
    const pl = apply(own, l, N);
    const gradient = apply(information, pl, N).map((g, a) => g + l[a]!);
    const shifted = apply(
      information,
      x.map((v, a) => v - predicted[after * N + a]!),
      N,
    );
    const system = times(p, information, N);
    for (let a = 0; a < N; a++) system[a * N + a] = system[a * N + a]! + 1;
    const solved = solve(system, p, N);
    if (!solved) return null;
    cavity = solved;
    const push = apply(
      cavity,
      gradient.map((g, a) => -g - shifted[a]!),
      N,
    );
    mean = x.map((v, a) => v + push[a]!);
  }
  const at = after < facts.count ? after : last;
  const wind = (c: Float64Array, o: number, a: number, b: number) =>
    c[o + a * N + b]! + c[o + (a + 2) * N + b]! + c[o + a * N + b + 2]! + c[o + (a + 2) * N + b + 2]!;
  const posterior = posteriorAt(smoother, at);
  const dEast = state[at * N]! + state[at * N + 2]! - mean[0]! - mean[2]!;
  const dNorth = state[at * N + 1]! + state[at * N + 3]! - mean[1]! - mean[3]!;
  const ce = wind(cavity, 0, 0, 0);
  const cn = wind(cavity, 0, 1, 1);
  const cc = wind(cavity, 0, 0, 1);
  const e = Math.max(0, ce - wind(posterior, 0, 0, 0)) + GRACE ** 2;
  const n = Math.max(0, cn - wind(posterior, 0, 1, 1)) + GRACE ** 2;
  const c = cc - wind(posterior, 0, 0, 1);
  const det = e * n - c * c;
  if (!(det > 0)) return null;
  const statistic = (n * dEast * dEast - 2 * c * dEast * dNorth + e * dNorth * dNorth) / det / 2;
  const half = Math.hypot((ce - cn) / 2, cc);
  return { first, after, statistic, without: Math.sqrt((ce + cn) / 2 + half) };
}

function posteriorAt(smoother: FactSmoother, i: number): Float64Array {
  const p = smoother.predictedCovariance.slice(i * N * N, (i + 1) * N * N);
  const m = smoother.adjointMatrix.subarray(i * N * N, (i + 1) * N * N);
  const fall = times(times(p, m, N), p, N);
  return p.map((v, a) => v - fall[a]!);
}
