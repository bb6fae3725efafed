/** One tendency tried on flights: its exercises, their mean, and its trend over the flights. */
import type { Share } from "../quantity/units.ts";
import type { ObservedFlight } from "./flight.ts";
import { type RobustMean, robustMean } from "./robust-mean.ts";
import type { Shown, Tendency } from "./tendency.ts";
import { type Line, mannKendall, theilSen } from "./trend.ts";
import { type UntoldByWhy, untoldOf } from "./untold.ts";

/** Nothing is said below. Chosen beforehand (an interval needs two flights; fewer exercises are anecdotes). */
export const LEAST_EXERCISES = 5;
const LEAST_FLIGHTS = 2;
/** A trend needs as many: of four values even the clearest order comes by chance once in twelve. */
const LEAST_FLIGHTS_FOR_TREND = 5;
/** One exercise on the panel of a habit; value and doubt in tolerances. */
export interface HabitPoint {
  /** Index of the flight. */
  readonly flight: number;
  readonly exercise: number;
  readonly value: number;
  readonly doubt95: number;
  /** Where in the exercise it shows most. */
  readonly at?: Shown;
}

export interface Tried {
  readonly tendency: Tendency;
  readonly points: readonly HabitPoint[];
  readonly byFlight: ReadonlyMap<number, readonly HabitPoint[]>;
  readonly tolerance: number;
  readonly untold: UntoldByWhy;
  readonly mean: RobustMean | null;
  readonly trend: (Line & { readonly p: Share }) | null;
}

function commonest(values: readonly number[]): number {
  const times = new Map<number, number>();
  for (const v of values) times.set(v, (times.get(v) ?? 0) + 1);
  return [...times].reduce((a, b) => (b[1] > a[1] ? b : a), [1, 0])[0];
}

export const average = (points: readonly HabitPoint[]): number =>
  points.reduce((sum, { value }) => sum + value, 0) / points.length;

/** What the exercises of all flights say of a tendency; without a mean where there are too few. */
export function tried(tendency: Tendency, flights: readonly ObservedFlight[]): Tried {
  const points: HabitPoint[] = [];
  const tolerances: number[] = [];
  const byFlight = new Map<number, HabitPoint[]>();
  const untold = untoldOf(tendency.id, flights);
  flights.forEach(({ observations }, flight) => {
    for (const { tendency: id, exercise, value, doubt95, tolerance, at } of observations) {
      if (id !== tendency.id) continue;
      const point = { flight, exercise, value, doubt95, ...(at ? { at } : {}) };
      points.push(point);
      tolerances.push(tolerance);
      byFlight.set(flight, [...(byFlight.get(flight) ?? []), point]);
    }
  });
  const told = points.length >= LEAST_EXERCISES && byFlight.size >= LEAST_FLIGHTS;
  const dated = [...byFlight].map(([at, those]) => ({ at, value: average(those) }));
  const line = told && byFlight.size >= LEAST_FLIGHTS_FOR_TREND ? theilSen(dated) : null;
  return {
    tendency,
    points,
    byFlight,
    tolerance: commonest(tolerances.length > 0 ? tolerances : untold.tolerances),
    untold: untold.byWhy,
    mean: told ? robustMean([...byFlight.values()], tendency.oneSided) : null,
    trend: line && { ...line, p: mannKendall(dated.map(({ value }) => value)).p },
  };
}
