/**
 * Changes of airspeed that hide in turns: each turn is asked whether the speed changed in it, and doubted accordingly.
 *
 * Speeds are often changed at a turn, and there a change looks much like wind. For a few courses of such a change the
 * turn's facts, with all before and after, tell how large it would be and how well that is known; the odds that there
 * was one at all follow, and the airspeed may change by as much as the two possibilities together scatter. Nothing is
 * taken away where the flight cannot tell: there the doubt is the one held beforehand.
 * Method: response of the filter's innovations to an additive change (A. Willsky, H. Jones, IEEE Trans. Automatic
 * Control 21 (1976) 108-112, from memory), a normal prior on its size, and moments of the mixture of the two.
 */

import { learn } from "./fact-model.ts";
import type { Facts } from "./facts.ts";
import type { FactSmoother } from "./filter.ts";
import { type Later, laterFacts, withLater } from "./later.ts";
import { apply } from "./matrix.ts";
import type { Run } from "./runs.ts";
import { type Belief, carry, fade, LEVEL, N } from "./state.ts";

/** Standard deviation of a change as a share of the airspeed. Tuned on simulated flights, seeds 1 to 60. */
const SIZE = 0.1;
/** Changes take about so long, s (0.5 kt/s, 15 kt), at the beginning or the end of a turn, or all of a short one. Common practice, no source. */
const LASTS = 30;
/** A turn's first and last fact stand for this much more, s. */
const MARGIN = 5;

interface Evidence {
  /** Gradient of the log likelihood by the size of the change, 1/kt, and the information on it, 1/kt2. */
  slope: number;
  information: number;
}

interface Window {
  readonly from: number;
  readonly to: number;
}

/** Sets the steps of the level in each turn to those of `base` and what the last pass makes of hidden changes. */
export function allowRamps(
  smoother: FactSmoother,
  belief: Belief,
  base: Float64Array,
  turns: readonly Run[],
  airspeed: number,
): void {
  const { facts } = smoother;
  for (const turn of turns) {
    if (turn.first === 0) continue;
    const windows = windowsOf(facts, turn);
    const found = evidence(smoother, belief, base, turn, windows);
    if (!found) continue;
    const changes = suspected(found, (SIZE * airspeed) ** 2, belief.hiddenChange);
    for (let i = turn.first; i <= turn.after && i < facts.count; i++) facts.levelStep[i] = base[i]!;
    for (const [w, window] of windows.entries()) spread(facts, turn, window, changes[w]!);
  }
}

function windowsOf({ seconds }: Facts, { first, after }: Run): Window[] {
  const from = seconds[first]! - MARGIN;
  const to = seconds[after - 1]! + MARGIN;
  const whole = { from, to };
  if (to - from <= 1.5 * LASTS) return [whole];
  return [whole, { from, to: from + LASTS }, { from: to - LASTS, to }];
}

/** Variance of the change in each window: the second moment about the mean of "none" and "one", as what must be allowed for it to come out. */
function suspected(found: readonly Evidence[], usual: number, beforehand: number): number[] {
  const odds = found.map(({ slope, information }) => {
    const gain = usual * information;
    const likelihood = (0.5 * usual * slope * slope) / (1 + gain) - 0.5 * Math.log(1 + gain);
    return (beforehand / found.length / (1 - beforehand)) * Math.exp(Math.min(50, likelihood));
  });
  const all = odds.reduce((sum, o) => sum + o, 1);
  return found.map(({ slope, information }, w) => {
    const chance = odds[w]! / all;
    const gain = usual * information;
    const size = (usual * slope) / (1 + gain);
    const scatter = chance * (usual / (1 + gain)) + chance * (1 - chance) * size * size;
    const most = 1.5 * usual;
    // a prior of variance v leaves v / (1 + v information)
    return scatter * information < 0.9 ? Math.min(most, scatter / (1 - scatter * information)) : most;
  });
}

function spread({ seconds, levelStep, count }: Facts, turn: Run, window: Window, variance: number): void {
  const end = Math.min(turn.after, count - 1);
  const inside = (i: number) => seconds[i]! > window.from && seconds[i - 1]! < window.to;
  let steps = 0;
  for (let i = turn.first; i <= end; i++) if (inside(i)) steps++;
  for (let i = turn.first; i <= end; i++) if (inside(i)) levelStep[i] = levelStep[i]! + variance / steps;
}

/** What the flight says of a steady change of the level by 1 kt over each window, were nothing but `base` allowed. */
function evidence(
  smoother: FactSmoother,
  belief: Belief,
  base: Float64Array,
  { first, after }: Run,
  windows: readonly Window[],
): Evidence[] | null {
  const { facts, kept, predicted, predictedCovariance } = smoother;
  const { seconds, levelStep } = facts;
  const x = predicted.slice(first * N, (first + 1) * N);
  const p = predictedCovariance.slice(first * N * N, (first + 1) * N * N);
  const h = new Float64Array(N);
  const gain = new Float64Array(N);
  // how far the filter itself has followed each change
  const followed = windows.map(() => new Float64Array(N));
  const found = windows.map((): Evidence => ({ slope: 0, information: 0 }));
  const level = LEVEL * N + LEVEL;
  const reached = ({ from, to }: Window, i: number) =>
    Math.max(0, Math.min(1, (seconds[i]! - from) / (to - from)));
  p[level] = p[level]! + base[first]! - levelStep[first]!;
  for (let i = first; ; i++) {
    if (i > first) {
      carry(belief, kept, facts, i, x, p);
      p[level] = p[level]! + base[i]! - levelStep[i]!;
      for (const f of followed) fade(kept, i, f);
    }
    if (i === after) break;
    const { surprise, variance } = smoother.foretell(i, x, p, h, gain);
    followed.forEach((f, w) => {
      let seen = h[LEVEL]! * reached(windows[w]!, i);
      for (let a = 0; a < N; a++) seen -= h[a]! * f[a]!;
      found[w]!.slope += (surprise * seen) / variance;
      found[w]!.information += (seen * seen) / variance;
      for (let a = 0; a < N; a++) f[a] = f[a]! + (gain[a]! / variance) * seen;
    });
    learn(x, p, gain, surprise, variance);
    if (i === facts.count - 1) return found;
  }
  const later = laterFacts(smoother, after);
  const known = later && withLater(p, later);
  if (!later || !known) return null;
  const off = x.map((v, a) => v - predicted[after * N + a]!);
  for (const [w, f] of followed.entries()) addLater(found[w]!, f, off, known, later);
  return found;
}

/** What the facts after the turn say of the change that the filter has not followed. */
function addLater(
  found: Evidence,
  followed: Float64Array,
  off: Float64Array,
  known: Float64Array,
  { information, gradient }: Later,
): void {
  const missed = followed.map((v, a) => (a === LEVEL ? 1 : 0) - v);
  const pull = apply(information, off, N).map((v, a) => v + gradient[a]!);
  const settled = apply(information, apply(known, pull, N), N);
  const weight = apply(information, missed, N);
  const eased = apply(known, weight, N);
  for (let a = 0; a < N; a++) {
    found.slope -= missed[a]! * (pull[a]! - settled[a]!);
    found.information += weight[a]! * (missed[a]! - eased[a]!);
  }
}
