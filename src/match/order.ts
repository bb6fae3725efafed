/** Which run is which exercise: the choice in the order of the brief that fits best in all. */
import type { Span } from "../quantity/span.ts";
import type { Run } from "./runs.ts";

export interface Chosen {
  readonly run: Run;
  /** Score of the best other run that would fit in the same place of the order, 0 where there is none. */
  readonly rival: number;
}

/** Runs of neighbouring exercises may overlap by this share of the shorter one: a corner that is cut lies along both. */
const OVERLAP = 0.25;
/** Choices looked at for one exercise, best first: keeps a day of circuits cheap. */
const MOST_RUNS = 40;

/**
 * The assignment with the greatest sum of scores in which exercises in the order of the brief have runs in the
 * order of the flight; an exercise may have none. Of equal sums the earlier run and the earlier exercise win.
 * Method: dynamic programming over the runs, as in the heaviest increasing subsequence.
 */
export function inOrder(runs: readonly (readonly Run[])[]): (Chosen | null)[] {
  const all = runs.flatMap((own, exercise) => best(own).map((run) => ({ exercise, run })));
  const total: number[] = [];
  const before: number[] = [];
  let last = -1;
  for (const [k, item] of all.entries()) {
    total[k] = 0;
    before[k] = -1;
    for (let j = 0; j < k; j++) {
      const earlier = all[j]!;
      if (earlier.exercise === item.exercise) break; // grouped by exercise
      if (total[j]! > total[k]! && follows(earlier.run.core, item.run.core)) {
        total[k] = total[j]!;
        before[k] = j;
      }
    }
    total[k] = total[k]! + item.run.score;
    if (last < 0 || total[k]! > total[last]!) last = k;
  }
  const path: number[] = [];
  for (let k = last; k >= 0; k = before[k]!) path.unshift(k);
  const chosen: (Chosen | null)[] = runs.map(() => null);
  path.forEach((k, i) => {
    const { exercise, run } = all[k]!;
    const previous = all[path[i - 1] ?? -1]?.run.core;
    const next = all[path[i + 1] ?? -1]?.run.core;
    const rivals = runs[exercise]!.filter(
      (other) =>
        other !== run && (!previous || follows(previous, other.core)) && (!next || follows(other.core, next)),
    );
    chosen[exercise] = { run, rival: Math.max(0, ...rivals.map((other) => other.score)) };
  });
  return chosen;
}

/** The best runs, still in flown order. */
function best(runs: readonly Run[]): readonly Run[] {
  if (runs.length <= MOST_RUNS) return runs;
  const limit = runs.map((run) => run.score).sort((a, b) => b - a)[MOST_RUNS - 1]!;
  return runs.filter((run) => run.score >= limit).slice(0, MOST_RUNS);
}

function follows(first: Span, second: Span): boolean {
  if (second.start >= first.end) return true;
  const shorter = Math.min(first.end - first.start, second.end - second.start);
  return (
    first.start < second.start && first.end < second.end && first.end - second.start <= OVERLAP * shorter
  );
}
