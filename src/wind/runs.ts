/** Runs of facts that belong to one turn. */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize } from "../quantity/units.ts";
import type { Facts } from "./facts.ts";

/** First fact of a turn, and first fact after it. */
export interface Run {
  readonly first: number;
  readonly after: number;
}

/** The turns of so many degrees or more, in order. */
export function turnsOf(facts: Facts, least: AngleSize): Run[] {
  const runs: Run[] = [];
  for (let i = 0; i < facts.count; ) {
    let j = i + 1;
    while (j < facts.count && facts.leg[j] === facts.leg[i]) j++;
    if (facts.turning[i]! > 0 && turned(facts, i, j) >= least) runs.push({ first: i, after: j });
    i = j;
  }
  return runs;
}

function turned({ east, north }: Facts, first: number, after: number): AngleSize {
  let sum = 0;
  for (let i = first + 1; i < after; i++) {
    const cross = north[i - 1]! * east[i]! - east[i - 1]! * north[i]!;
    sum += Math.atan2(cross, north[i - 1]! * north[i]! + east[i - 1]! * east[i]!);
  }
  return Math.abs(sum) * DEGREES_PER_RADIAN;
}
