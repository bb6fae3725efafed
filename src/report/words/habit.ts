/** Habits in words: the sentence, its proof, its trend and what to practise; nothing is said of what is not known. */
import type { Habit, Practise, TendencyUnit } from "../../habit/index.ts";
import { HABIT_WORDS, type HabitWords } from "./habit-words.ts";
import { capital } from "./number.ts";

const DIGITS: Readonly<Record<TendencyUnit, number>> = {
  share: 2,
  part: 0,
  s: 0,
  "per-min": 1,
  NM: 2,
  deg: 0,
};
const UNITS: Readonly<Record<TendencyUnit, string>> = {
  share: " of full scale",
  part: " %",
  s: " seconds",
  "per-min": " a minute",
  NM: " NM",
  deg: "°",
};

const wordsOf = ({ id }: Pick<Habit, "id">): HabitWords => {
  const words = HABIT_WORDS[id];
  if (!words) throw new RangeError(`invalid tendency: ${id}`);
  return words;
};

export const habitTitle = (habit: Pick<Habit, "id">): string => wordsOf(habit).title;
export const habitPractise = (habit: Pick<Habit, "id">): string => wordsOf(habit).practise;

/** The names of the sides of 0; empty where there is none. */
export const habitSides = (habit: Pick<Habit, "id">): { more: string; less: string } => {
  const { more, less } = wordsOf(habit);
  return { more, less };
};

/** A size in the habit's own unit, as in "12°". */
function size({ unit, tolerance }: Habit, tolerances: number): string {
  const value = Math.abs(tolerances) * tolerance * (unit === "part" ? 100 : 1);
  return `${value.toFixed(DIGITS[unit])}${UNITS[unit]}`;
}

const QUARTERS: Readonly<Record<string, string>> = { "0.25": "¼", "0.5": "½", "0.75": "¾" };

/** What counts as 1, as in "1 = ¾ of full scale". */
export function habitTolerance({ unit, tolerance }: Habit): string {
  if (unit === "part") return "1 = a third of what is needed";
  if (unit === "share") {
    if (tolerance === 1) return "1 = full scale";
    return `1 = ${QUARTERS[String(tolerance)] ?? tolerance} of full scale`;
  }
  const rounded = Number(tolerance.toFixed(2));
  if (unit === "per-min") return rounded === 1 ? "1 = once a minute" : `1 = ${rounded} a minute`;
  return `1 = ${rounded}${unit === "s" ? " s" : UNITS[unit]}`;
}

/** Whose tolerance that is, and what is held against it where that is not plain. */
export function habitToleranceFrom(habit: Pick<Habit, "id">): string {
  const { from, over } = wordsOf(habit);
  return over ? `${from}; ${over}` : from;
}

/** The habit as a sentence; one that is not sure says so. Empty where there are too few exercises. */
export function habitSentence(habit: Habit, sure = true): string {
  if (!habit.mean) return "";
  const { value } = habit.mean;
  const says = wordsOf(habit).says(size(habit, value), value >= 0);
  return sure ? `${capital(says)}.` : `It may be that ${says}.`;
}

/** Why exercises that were meant for it do not tell, as in " (in 8 the wind is not known well enough)". */
function whyUntold({ untold }: Habit): string {
  const { "wind-not-known": unknown = 0, "little-wind": little = 0 } = untold;
  const whys = [
    ...(unknown > 0 ? [`in ${unknown} the wind is not known well enough`] : []),
    ...(little > 0 ? [`in ${little} it asked for too little correction to tell`] : []),
  ];
  return whys.length > 0 ? ` (${whys.join(", ")})` : "";
}

export const habitStatus = (habit: Habit): string => {
  const { status, mean } = habit;
  switch (status) {
    case "beyond":
      return "beyond the tolerance";
    case "habit":
      return mean && Math.max(mean.high95, -mean.low95) > 1
        ? "a habit, perhaps beyond the tolerance"
        : "a habit, within the tolerance";
    case "small":
      return "no habit";
    case "cannot-tell":
      return "cannot tell";
    case "too-few":
      return `not enough yet${whyUntold(habit)}`;
  }
};

/** The mean with its side, as in "12° past"; empty where there is none. */
export function habitMean(habit: Habit): string {
  if (!habit.mean) return "";
  const { more, less } = habitSides(habit);
  const rate = habit.unit === "per-min"; // a rate has no side
  const side = rate ? "" : habit.mean.value >= 0 ? more : less;
  const says = size(habit, habit.mean.value);
  return Number.parseFloat(says) === 0 || side === "" ? says : `${says} ${side}`;
}

/** In tolerances, largest side first, as in "1.2 to 1.6"; the other side of 0 keeps its minus. */
export function habitInterval({ mean }: Habit): string {
  if (!mean) return "";
  const sign = mean.value < 0 ? -1 : 1;
  const ends = [sign * mean.low95, sign * mean.high95].sort((a, b) => a - b);
  return ends.map((v) => (Math.abs(v) < 0.05 ? 0 : v).toFixed(1).replace("-", "−")).join(" to ");
}

export const habitEffect = ({ mean }: Habit): string => (mean ? Math.abs(mean.value).toFixed(1) : "");

/** "better by 2 seconds a flight", "none seen", or why there is none. */
export function habitTrend(habit: Habit): string {
  if (!habit.mean) return "";
  if (!habit.trend) return "none seen";
  const step = size(habit, habit.trend.perFlight);
  const by = Number.parseFloat(step) === 0 ? "slowly" : `by ${step} a flight`;
  return `${habit.trend.better ? "better" : "worse"}, ${by}`;
}

export const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "s"}`;

/** What the sentence rests on. */
export function habitProof(habit: Habit): string {
  const { exercises, flights, trend } = habit;
  const over = `${plural(exercises, "exercise")} on ${plural(flights, "flight")}`;
  if (!habit.mean) return `${over}: not enough yet; five exercises on two flights are needed.`;
  const interval = `${habitEffect(habit)} tolerances (95 %: ${habitInterval(habit)})`;
  return `${interval}, ${over}.${trend ? ` ${capital(habitTrend(habit))}.` : ""}`;
}

export const practiseSentence = ({ habit, sure }: Practise): string =>
  sure ? habitPractise(habit) : `so that it can be told, ${habitPractise(habit)}`;
