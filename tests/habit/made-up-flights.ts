/** Flights that say what a test wants them to say. */
import { type Habit, habitsOf, type ObservedFlight } from "../../src/habit/index.ts";

export const DAY = 86_400_000;
export const START = Date.UTC(2026, 2, 1, 9);

/** A flight whose exercises say these values, in tolerances, of each tendency named. */
export function flight(
  index: number,
  says: Readonly<Record<string, readonly number[]>>,
  labels: { pilot?: string; aircraft?: string } = {},
): ObservedFlight {
  return {
    id: `flight ${index}`,
    title: `Lesson ${index}`,
    startUtc: new Date(START + index * DAY).toISOString(),
    endUtc: new Date(START + index * DAY + 3_600_000).toISOString(),
    pilot: labels.pilot ?? null,
    aircraft: labels.aircraft ?? null,
    observations: Object.entries(says).flatMap(([tendency, values]) =>
      values.map((value, exercise) => ({ tendency, exercise, value, doubt95: 0.1, tolerance: 30 })),
    ),
  };
}

export const flights = (count: number, says: (i: number) => Readonly<Record<string, readonly number[]>>) =>
  Array.from({ length: count }, (_, i) => flight(i, says(i)));

export function habitNamed(id: string, of: readonly ObservedFlight[]): Habit {
  const habit = habitsOf(of).habits.find((h) => h.id === id);
  if (!habit) throw new Error(`no ${id}`);
  return habit;
}

export const late = (of: readonly ObservedFlight[]) => habitNamed("descent-late", of);
