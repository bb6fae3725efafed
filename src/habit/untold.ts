/** Exercises that were meant for a tendency and do not tell it: how many, and why. */
import type { Untold } from "./flight.ts";
import type { WhyUntold } from "./tendency.ts";

/** How many exercises do not tell, by why; those of no why are left out. */
export type UntoldByWhy = Readonly<Partial<Record<WhyUntold, number>>>;

export const isUntold = (untold: UntoldByWhy): boolean => Object.keys(untold).length > 0;

export function untoldOf(
  tendency: string,
  flights: readonly { readonly untold?: readonly Untold[] }[],
): { readonly byWhy: UntoldByWhy; readonly tolerances: readonly number[] } {
  const byWhy: Partial<Record<WhyUntold, number>> = {};
  const tolerances: number[] = [];
  for (const { untold = [] } of flights) {
    for (const one of untold) {
      if (one.tendency !== tendency) continue;
      byWhy[one.why] = (byWhy[one.why] ?? 0) + 1;
      tolerances.push(one.tolerance);
    }
  }
  return { byWhy, tolerances };
}
