/** Many flights in words: whose they are, what the whole rests on, and what is said where no habit is. */
import { type HabitReport, practiseNext } from "../../habit/index.ts";
import { habitMean, habitTitle, plural } from "./habit.ts";
import { shownName } from "./name.ts";
import { day } from "./number.ts";

/** "Seen best on" flights as dates, by their indices. */
export const flightName = ({ flights }: HabitReport, index: number): string => {
  const flight = flights[index];
  return flight?.startUtc ? day(flight.startUtc) : (flight?.title ?? "");
};

const pilotsOf = ({ flights }: HabitReport): number =>
  new Set(flights.flatMap(({ pilot }) => (pilot === null ? [] : [pilot]))).size;

/** That several pilots were put together, or flights of nobody named taken as one pilot's; empty where it is one, or one flight. */
export function habitsWhose(report: HabitReport): string {
  const pilots = pilotsOf(report);
  const unnamed = report.flights.filter(({ pilot }) => pilot === null).length;
  if (pilots === 0 && unnamed > 1)
    return "No pilot is named for these flights: they are taken as one pilot’s, and what is told is a habit only if they are.";
  if (pilots === 1 && unnamed > 0) {
    const named = shownName(report.flights.find(({ pilot }) => pilot !== null)!.pilot!);
    return `Of ${named}, and ${plural(unnamed, "flight")} of nobody named, taken as ${named}’s too: what is told is a habit only if they are.`;
  }
  if (pilots < 2) return "";
  const and = unnamed > 0 ? `, and ${plural(unnamed, "flight")} of nobody named` : "";
  return `Of ${pilots} pilots together${and}: an average over them, which need be the habit of none. Choose one pilot to see what keeps coming back with that pilot.`;
}

/** What all flights have in common, as their pilot; empty where they differ, or nobody said. */
function common({ flights }: HabitReport, of: (flight: HabitReport["flights"][number]) => string | null) {
  const [name = null, ...others] = new Set(flights.map(of));
  return name === null || others.length > 0 ? "" : shownName(name);
}

/** What the whole rests on. */
export function habitsHead(report: HabitReport): string {
  const { flights, exercises } = report;
  const pilots = pilotsOf(report);
  const times = flights.flatMap(({ startUtc }) => (startUtc ? [startUtc] : []));
  const [first, last] = [times[0], times.at(-1)];
  const when =
    first && last ? (day(first) === day(last) ? `, ${day(first)}` : `, ${day(first)} to ${day(last)}`) : "";
  const pilot = common(report, (flight) => flight.pilot);
  const aircraft = common(report, (flight) => flight.aircraft);
  const of = pilots > 1 ? ` of ${pilots} pilots together` : pilot ? ` of ${pilot}` : "";
  const on = aircraft ? ` in ${aircraft}` : "";
  return `${plural(flights.length, "flight")}${of}${on}, ${plural(exercises, "exercise")}${when}.`;
}

export const HABITS_RULES =
  "Nothing is said below five exercises on two flights; exercises of one flight count together; of all that is called a habit, at most one in twenty may be chance. A mean within a quarter of the tolerance is no habit.";

/** Said where nothing is. */
export function noPractise({ habits }: HabitReport): string {
  return habits.some(({ mean }) => mean)
    ? "No habit stands out from these flights. That is not proof that there is none: more flights tell more."
    : "Not enough yet: five exercises on two flights are needed before anything is said.";
}

/** One pilot among several in a line: how many flights, and the habits. */
export function pilotLine(report: HabitReport): string {
  const told = practiseNext(report).map(({ habit }) => `${habitTitle(habit)} ${habitMean(habit)}`);
  return `${plural(report.flights.length, "flight")}: ${told.join("; ") || "no habit stands out"}.`;
}
