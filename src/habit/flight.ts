/** One flight as habits see it: who flew what when, and what each exercise says of each tendency. */
import type { DebriefDocument } from "../debrief/document.ts";
import { TENDENCIES } from "./tendencies.ts";
import type { Shown, WhyUntold } from "./tendency.ts";

/** What the user calls a flight; all of it optional. */
export interface FlightLabels {
  /** The caller's own name of the flight, given back where it is meant. */
  readonly id: string;
  readonly pilot?: string | null;
  readonly aircraft?: string | null;
}

/** What one exercise says of one tendency, in tolerances: 0 as it should be, 1 at the tolerance. */
export interface Observation {
  readonly tendency: string;
  /** Index in the document. */
  readonly exercise: number;
  readonly value: number;
  readonly doubt95: number;
  /** What counted as 1, in the tendency's unit. */
  readonly tolerance: number;
  /** Where in the exercise it shows most, where some moment shows it more than others. */
  readonly at?: Shown;
}

/** A tendency that an exercise was meant for and does not tell. */
export interface Untold {
  readonly tendency: string;
  /** Index in the document. */
  readonly exercise: number;
  readonly why: WhyUntold;
  readonly tolerance: number;
}

/** All that habits need of a flight, small enough to keep thousands. */
export interface ObservedFlight {
  readonly id: string;
  readonly title: string;
  readonly startUtc: string | null;
  readonly endUtc: string | null;
  readonly pilot: string | null;
  readonly aircraft: string | null;
  readonly observations: readonly Observation[];
  readonly untold?: readonly Untold[];
}

/** Reads the tendencies off a document. */
export function observeFlight(document: DebriefDocument, labels: FlightLabels): ObservedFlight {
  const { log, brief, exercises } = document;
  const observations: Observation[] = [];
  const untold: Untold[] = [];
  exercises.forEach((of, exercise) => {
    for (const tendency of TENDENCIES) {
      const measured = tendency.measure(of, document);
      const tolerance = tendency.tolerance(of);
      const about = { tendency: tendency.id, exercise, tolerance };
      if (measured && Number.isFinite(measured.value)) {
        const { value, doubt95, at } = measured;
        const shown = at ? { at } : {};
        observations.push({ ...about, value: value / tolerance, doubt95: doubt95 / tolerance, ...shown });
        continue;
      }
      const why = tendency.untold?.(of, document) ?? null;
      if (why) untold.push({ ...about, why });
    }
  });
  return {
    id: labels.id,
    title: brief?.title || log.name || log.file,
    startUtc: log.startUtc,
    endUtc: log.endUtc,
    pilot: labels.pilot || null,
    aircraft: labels.aircraft || null,
    observations,
    untold,
  };
}

/** Which flights to look at; what is not given does not matter. Times are ISO 8601, `to` is left out. */
export interface FlightChoice {
  readonly pilot?: string | null;
  readonly aircraft?: string | null;
  readonly from?: string | null;
  readonly to?: string | null;
}

/** The flights chosen, in flown order; those without a time last. A flight without a time is in no period. */
export function chooseFlights(
  flights: readonly ObservedFlight[],
  choice: FlightChoice = {},
): ObservedFlight[] {
  const { pilot, aircraft, from, to } = choice;
  const time = (flight: ObservedFlight) => (flight.startUtc ? Date.parse(flight.startUtc) : Number.NaN);
  return flights
    .filter((flight) => !pilot || flight.pilot === pilot)
    .filter((flight) => !aircraft || flight.aircraft === aircraft)
    .filter((flight) => !from || time(flight) >= Date.parse(from))
    .filter((flight) => !to || time(flight) < Date.parse(to))
    .sort((a, b) => {
      const [first, second] = [time(a), time(b)];
      if (Number.isNaN(first) || Number.isNaN(second))
        return Number(Number.isNaN(first)) - Number(Number.isNaN(second));
      return first - second;
    });
}

/** The flights of each pilot who is named, in the order of their names. */
export const flightsByPilot = (flights: readonly ObservedFlight[]): ObservedFlight[][] =>
  [...new Set(flights.flatMap(({ pilot }) => pilot ?? []))]
    .sort((a, b) => a.localeCompare(b, "en"))
    .map((pilot) => chooseFlights(flights, { pilot }));
