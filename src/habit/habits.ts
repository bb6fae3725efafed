/** The habits of a pilot: each tendency told by its mean, its trend and the flights that show it, chance kept in check. */
import type { Share } from "../quantity/units.ts";
import { falseDiscoveryShares } from "./discoveries.ts";
import type { ObservedFlight } from "./flight.ts";
import { chanceBeyond, type RobustMean } from "./robust-mean.ts";
import { TENDENCIES } from "./tendencies.ts";
import type { Tendency } from "./tendency.ts";
import { endsNearer } from "./trend.ts";
import { average, type HabitPoint, type Tried, tried } from "./tried.ts";
import { isUntold, type UntoldByWhy } from "./untold.ts";

/** A mean within this part of the tolerance is no habit, however sure. Chosen: a quarter of scale where three quarters is the limit. */
export const SMALL: Share = 0.25;
/** Of all that is said, at most this share is chance. */
const FALSE_DISCOVERIES: Share = 0.05;
/** Flights on which a habit was seen best, named at the most. Chosen: so many are looked at again. */
const FLIGHTS_SHOWN = 3;

/**
 * `beyond`: a habit, its mean surely beyond the tolerance; `habit`: surely more than small; `small`: surely no more than
 * that; `cannot-tell`: neither; `too-few`: below five exercises or two flights.
 */
export type HabitStatus = "beyond" | "habit" | "small" | "cannot-tell" | "too-few";

/** Values in tolerances; times what counts as 1, in the unit of the tendency, they are its own values. */
export interface Habit {
  readonly id: string;
  readonly unit: Tendency["unit"];
  readonly oneSided: boolean;
  /** What counts as 1: the commonest among the exercises. */
  readonly tolerance: number;
  readonly status: HabitStatus;
  /** Null where there are too few. */
  readonly mean: { readonly value: number; readonly low95: number; readonly high95: number } | null;
  /** Share of false discoveries at which the habit, and that it is beyond the tolerance, would be claimed. */
  readonly chance: Share | null;
  readonly chanceBeyond: Share | null;
  readonly exercises: number;
  readonly flights: number;
  /**
   * Borne out by the flights; null where none is, or where it leads from one side to the other and is neither better nor
   * worse. `perFlight` in tolerances; the line runs over the index of the flight.
   */
  readonly trend: {
    readonly perFlight: number;
    readonly from: number;
    readonly better: boolean;
    readonly chance: Share;
  } | null;
  readonly points: readonly HabitPoint[];
  /** Flights that show it most, as indices. */
  readonly seenOn: readonly number[];
  readonly untold: UntoldByWhy;
}

export interface HabitReport {
  /** In flown order. */
  readonly flights: readonly ObservedFlight[];
  /** That said something. */
  readonly exercises: number;
  /** The largest first; those with too few exercises last. */
  readonly habits: readonly Habit[];
}

function statusOf(mean: RobustMean | null, chance: Share | null, beyond: Share | null): HabitStatus {
  if (!mean || chance === null || beyond === null) return "too-few";
  if (chance <= FALSE_DISCOVERIES) return beyond <= FALSE_DISCOVERIES ? "beyond" : "habit";
  return Math.max(-mean.low95, mean.high95) <= SMALL ? "small" : "cannot-tell";
}

/** The flights with the largest means on the side of the habit. */
function seenOn({ byFlight, mean }: Tried): number[] {
  if (!mean) return [];
  const side = Math.sign(mean.mean);
  return [...byFlight]
    .map(([flight, those]) => ({ flight, value: side * average(those) }))
    .filter(({ value }) => value > SMALL)
    .sort((a, b) => b.value - a.value)
    .slice(0, FLIGHTS_SHOWN)
    .map(({ flight }) => flight);
}

/** The exercise of a flight that shows a habit most, on its side; null where none is on it. */
export function shownBest({ points, mean }: Habit, flight: number): HabitPoint | null {
  const side = Math.sign(mean?.value ?? 0);
  return points
    .filter((point) => point.flight === flight && side * point.value > 0)
    .reduce<HabitPoint | null>((a, b) => (a && side * a.value >= side * b.value ? a : b), null);
}

/**
 * The habits over flights in flown order. Each is held against what is small (a quarter of the tolerance), not against
 * nothing at all, because nobody's mean is exactly 0; the chances of all that are tried are held together by Benjamini
 * and Hochberg, and likewise those of the trends.
 */
export function habitsOf(flights: readonly ObservedFlight[]): HabitReport {
  const all = TENDENCIES.map((tendency) => tried(tendency, flights));
  const told = all.filter(({ mean }) => mean);
  const shares = (edge: number) => falseDiscoveryShares(told.map(({ mean }) => chanceBeyond(mean!, edge)));
  const [chances, beyonds] = [shares(SMALL), shares(1)];
  const trended = all.filter(({ trend }) => trend);
  const trends = falseDiscoveryShares(trended.map(({ trend }) => trend!.p));
  const shareOf = (list: readonly Tried[], of: readonly Share[], t: Tried): Share | null =>
    of[list.indexOf(t)] ?? null;

  const habits = all.map((t): Habit => {
    const chance = shareOf(told, chances, t);
    const beyond = shareOf(told, beyonds, t);
    const trendChance = shareOf(trended, trends, t);
    const { mean, trend } = t;
    const better = trend && endsNearer(trend, [...t.byFlight.keys()], SMALL);
    const borneOut =
      trend && mean && trendChance !== null && trendChance <= FALSE_DISCOVERIES && trend.slope !== 0;
    return {
      id: t.tendency.id,
      unit: t.tendency.unit,
      oneSided: t.tendency.oneSided,
      tolerance: t.tolerance,
      status: statusOf(mean, chance, beyond),
      mean: mean && { value: mean.mean, low95: mean.low95, high95: mean.high95 },
      chance,
      chanceBeyond: beyond,
      exercises: t.points.length,
      flights: t.byFlight.size,
      trend:
        borneOut && better !== null
          ? { perFlight: trend.slope, from: trend.from, better, chance: trendChance }
          : null,
      points: t.points,
      seenOn: seenOn(t),
      untold: t.untold,
    };
  });
  const size = ({ mean }: Habit) => (mean ? Math.abs(mean.value) : -1);
  const flown = flights.flatMap(({ observations }, i) =>
    observations.map(({ exercise }) => `${i} ${exercise}`),
  );
  return {
    flights,
    exercises: new Set(flown).size,
    habits: habits
      .filter(({ exercises, untold }) => exercises > 0 || isUntold(untold))
      .sort((a, b) => size(b) - size(a)),
  };
}
