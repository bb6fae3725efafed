/** One flight as habits see it: who flew what when, and what each exercise says of each tendency. */
import type { DebriefDocument } from "../debrief/document.ts";
import { TENDENCIES } from "./tendencies.ts";

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
}

/** Reads the tendencies off a document. */
export function observeFlight(document: DebriefDocument, labels: FlightLabels): ObservedFlight {
  const { log, brief, exercises } = document;
  return {
    id: labels.id,
    title: brief?.title || log.name || log.file,
    startUtc: log.startUtc,
    endUtc: log.endUtc,
    pilot: labels.pilot || null,
    aircraft: labels.aircraft || null,
    observations: exercises.flatMap((exercise, index) =>
      TENDENCIES.flatMap((tendency): Observation[] => {
        const measured = tendency.measure(exercise, document);
        if (!measured || !Number.isFinite(measured.value)) return [];
        const tolerance = tendency.tolerance(exercise);
        return [
          {
            tendency: tendency.id,
            exercise: index,
            value: measured.value / tolerance,
            doubt95: measured.doubt95 / tolerance,
            tolerance,
          },
        ];
      }),
    ),
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
