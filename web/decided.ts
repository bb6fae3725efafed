/** How many of each verdict a flight has, as they stand: the instructor's where one was overruled, else the computed ones. */
import type { Overrule } from "../src/index.ts";
import type { FlightRow, JudgedExercise } from "./store/schema.ts";

export interface Decided {
  readonly counts: Readonly<Record<string, number>>;
  /** How many of them are the instructor's. */
  readonly overruled: number;
}

/** As notes find their exercise: the one at its index that is called so, else the first that is. */
function exerciseOf({ exercise, title }: Overrule, judged: readonly JudgedExercise[]): number {
  if (exercise !== null && judged[exercise]?.title === title) return exercise;
  return judged.findIndex((one) => one.title === title);
}

function worked({ summary, notes }: FlightRow): Decided {
  const counts: Record<string, number> = { ...summary?.verdicts };
  const byCriterion = new Map<string, readonly [from: string, to: string]>();
  const judged = summary?.judged ?? [];
  for (const overrule of notes.overrules) {
    const at = exerciseOf(overrule, judged);
    const computed = judged[at]?.verdicts[overrule.criterion];
    if (computed !== undefined) byCriterion.set(`${at} ${overrule.criterion}`, [computed, overrule.verdict]);
  }
  for (const [from, to] of byCriterion.values()) {
    counts[from] = (counts[from] ?? 0) - 1;
    counts[to] = (counts[to] ?? 0) + 1;
  }
  return { counts, overruled: byCriterion.size };
}

const known = new WeakMap<FlightRow, Decided>();

export function decided(row: FlightRow): Decided {
  const before = known.get(row) ?? worked(row);
  known.set(row, before);
  return before;
}
