/**
 * Changes of airspeed that nothing announced, found where the flight, as solved, strains against its own model.
 *
 * The adjoint of the backward smoother at a step says by how much the cost would fall were the airspeed level allowed
 * to jump there, and how large the jump would be. Source: de Jong & Penzer, "Diagnosing shocks in time series",
 * J. Amer. Statist. Assoc. 93 (1998) 796-806, section 2.
 */
import { type FactSmoother, N } from "./filter.ts";

const LEVEL = 4;
/** A fall of chi-square by this much is a jump: 2.7 standard deviations, met by chance six times in a thousand. Tuned on simulated flights. */
const STRAIN = 7.5;
/** In a turn a change of speed hides behind the wind: it is feared at 1.4 standard deviations already. Tuned on simulated training flights with changes of speed in turns. */
const STRAIN_IN_TURN = 2;
/** Jumps found at one time are this far apart, s. */
const APART = 60;
/** A jump takes time: it is allowed over the steps within this of it, s. */
const REACH = 12;

/** Allows the jumps that the last pass calls for; returns how many. Run again after each new solution. */
export function allowShocks(smoother: FactSmoother): number {
  const { facts, adjoint, adjointMatrix } = smoother;
  const strain = new Float64Array(facts.count);
  for (let i = 1; i < facts.count; i++) {
    const information = adjointMatrix[i * N * N + LEVEL * N + LEVEL]!;
    if (information > 1e-9) strain[i] = adjoint[i * N + LEVEL]! ** 2 / information;
  }
  let found = 0;
  for (let i = 1; i < facts.count; i++) {
    const hidden = facts.turning[i]! > 0 || facts.turning[i - 1]! > 0;
    if (strain[i]! < (hidden ? STRAIN_IN_TURN : STRAIN) || !isPeak(facts.seconds, strain, i)) continue;
    const jump = adjoint[i * N + LEVEL]! / adjointMatrix[i * N * N + LEVEL * N + LEVEL]!;
    let first = i;
    while (first > 1 && facts.seconds[i]! - facts.seconds[first - 1]! <= REACH) first--;
    let last = i;
    while (last < facts.count - 1 && facts.seconds[last + 1]! - facts.seconds[i]! <= REACH) last++;
    const share = jump ** 2 / (last - first + 1);
    for (let s = first; s <= last; s++) facts.levelStep[s] = facts.levelStep[s]! + share;
    found++;
  }
  return found;
}

function isPeak(seconds: Float64Array, strain: Float64Array, i: number): boolean {
  for (let j = i - 1; j >= 0 && seconds[i]! - seconds[j]! < APART; j--)
    if (strain[j]! >= strain[i]!) return false;
  for (let j = i + 1; j < strain.length && seconds[j]! - seconds[i]! < APART; j++)
    if (strain[j]! > strain[i]!) return false;
  return true;
}
