/** Which run is which exercise: the choice in the order of the brief that fits best in all. */
import type { Share } from "../quantity/units.ts";
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
      if (total[j]! > total[k]! && follows(earlier.run, item.run)) {
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
    const previous = all[path[i - 1] ?? -1]?.run;
    const next = all[path[i + 1] ?? -1]?.run;
    const rivals = runs[exercise]!.filter(
      (other) => other !== run && (!previous || follows(previous, other)) && (!next || follows(other, next)),
    );
    chosen[exercise] = { run, rival: Math.max(0, ...rivals.map((other) => other.score)) };
  });
  return chosen;
}

/** Flown out of the brief's order, a run is taken only where it fits so well. Chosen: a course well flown has 0.8, one flown 2 NM off a half. */
const FITS_WELL: Share = 0.6;
/** ... and where any other run fits less than this share as well. Chosen, as half counts for doubt. */
const ALONE: Share = 0.6;

/**
 * What the order of the brief left without a run, where one fits well, none other does, and no exercise has it yet:
 * flown out of that order. Of two exercises that want the same run the better fit has it.
 */
export function withOutOfOrder(
  chosen: readonly (Chosen | null)[],
  runs: readonly (readonly Run[])[],
): (Chosen | null)[] {
  const all = [...chosen];
  const free = (run: Run) => all.every((c) => !c || follows(c.run, run) || follows(run, c.run));
  const wanted = runs.flatMap((own, exercise) => {
    if (chosen[exercise]) return [];
    const [run, rival] = own.filter(free).sort((a, b) => b.score - a.score);
    const alone = run && run.score >= FITS_WELL && (rival?.score ?? 0) < ALONE * run.score;
    return alone ? [{ exercise, run, rival: rival?.score ?? 0 }] : [];
  });
  for (const { exercise, run, rival } of wanted.sort((a, b) => b.run.score - a.run.score))
    if (free(run)) all[exercise] = { run, rival };
  return all;
}

/** The best runs, still in flown order. */
function best(runs: readonly Run[]): readonly Run[] {
  if (runs.length <= MOST_RUNS) return runs;
  const limit = runs.map((run) => run.score).sort((a, b) => b - a)[MOST_RUNS - 1]!;
  return runs.filter((run) => run.score >= limit).slice(0, MOST_RUNS);
}

/** Whether one run was flown after another. What may lead up to a fix on the line of the second one takes that part from it. */
function follows({ core: first }: Run, { core, latest }: Run): boolean {
  const second = { start: Math.max(core.start, Math.min(first.end, latest ?? core.start)), end: core.end };
  if (second.start >= first.end) return true;
  const shorter = Math.min(first.end - first.start, second.end - second.start);
  return (
    first.start < second.start && first.end < second.end && first.end - second.start <= OVERLAP * shorter
  );
}
