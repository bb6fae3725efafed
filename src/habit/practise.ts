/** What to practise next: the largest habits, then what only more flights can tell. */
import type { Habit, HabitReport } from "./habits.ts";

/** More than three is no advice. Chosen. */
const MOST = 3;

export interface Practise {
  readonly habit: Habit;
  /** A habit, or one that may be and is worth an exercise that tells. */
  readonly sure: boolean;
}

/** The largest first, in tolerances; what is not sure stands last, and only where its side is known and it may be beyond the tolerance. */
export function practiseNext({ habits }: HabitReport): Practise[] {
  const sure = habits.filter(({ status }) => status === "habit" || status === "beyond");
  const unsure = habits.filter(
    ({ status, mean }) =>
      status === "cannot-tell" &&
      mean !== null &&
      mean.low95 * mean.high95 > 0 && // the side is known
      Math.max(mean.high95, -mean.low95) > 1,
  );
  return [
    ...sure.map((habit) => ({ habit, sure: true })),
    ...unsure.map((habit) => ({ habit, sure: false })),
  ].slice(0, MOST);
}
