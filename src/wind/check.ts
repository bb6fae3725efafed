/**
 * Does the flight agree with itself? Each turn is left out, the wind in it predicted from all the rest, and compared.
 *
 * A change of airspeed inside a turn looks just like wind. One turn cannot tell them apart; several can.
 * Leaving out needs no new solution: the forward filter before the turn and the backward smoother after it together
 * are the answer without it.
 */
import type { FactSmoother } from "./filter.ts";
import { laterFacts, withLater } from "./later.ts";
import { apply, times } from "./matrix.ts";
import type { Run } from "./runs.ts";
import { type Belief, carry, N } from "./state.ts";

export interface TurnCheck extends Run {
  /** Mean square of the normalised difference over the two components of the wind: 1 where the doubts are right. */
  readonly statistic: number;
  /** Standard deviation along the worse axis of the wind predicted without the turn, kt. */
  readonly without: number;
}

/** A difference of less than this is never held against a turn, kt. */
const GRACE = 0.7;

/** Compares a run of facts [first, after) with all others; null where there is nothing on one side to compare with. */
export function checkRun(smoother: FactSmoother, belief: Belief, { first, after }: Run): TurnCheck | null {
  const { facts, kept, predicted, predictedCovariance } = smoother;
  const last = after - 1;
  // forward to the last fact of the run, measuring nothing in it
  const x = predicted.slice(first * N, first * N + N);
  const p = predictedCovariance.slice(first * N * N, (first + 1) * N * N);
  for (let i = first + 1; i <= last; i++) carry(belief, kept, facts, i, x, p);
  let cavity: Float64Array = p;
  let mean: Float64Array = x;
  if (after < facts.count) {
    carry(belief, kept, facts, after, x, p);
    const later = laterFacts(smoother, after);
    const known = later && withLater(p, later);
    if (!later || !known) return null;
    const off = x.map((v, a) => v - predicted[after * N + a]!);
    const pull = apply(later.information, off, N).map((v, a) => v + later.gradient[a]!);
    const push = apply(known, pull, N);
    cavity = known;
    mean = x.map((v, a) => v - push[a]!);
  }
  const at = after < facts.count ? after : last;
  const thousands = facts.thousands[at]!;
  const parts = (a: number) => [a, a + 2, a + 7] as const;
  const share = [1, 1, thousands] as const;
  const wind = (c: Float64Array, a: number, b: number) =>
    parts(a).reduce(
      (sum, p, m) => sum + parts(b).reduce((s, q, n) => s + share[m]! * share[n]! * c[p * N + q]!, 0),
      0,
    );
  const posterior = posteriorAt(smoother, at);
  const dEast = smoother.windEast(at) - mean[0]! - mean[2]! - mean[7]! * thousands;
  const dNorth = smoother.windNorth(at) - mean[1]! - mean[3]! - mean[8]! * thousands;
  const ce = wind(cavity, 0, 0);
  const cn = wind(cavity, 1, 1);
  const cc = wind(cavity, 0, 1);
  const e = Math.max(0, ce - wind(posterior, 0, 0)) + GRACE ** 2;
  const n = Math.max(0, cn - wind(posterior, 1, 1)) + GRACE ** 2;
  const c = cc - wind(posterior, 0, 1);
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
