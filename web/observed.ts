/** The flights of the logbook as habits see them: each document is read once, and again only when the flight has changed. */
import { signal } from "@preact/signals";
import { type ObservedFlight, observeFlight } from "../src/index.ts";
import { orSay } from "./flight.ts";
import { standing } from "./logbook.ts";
import { SAMPLE_TAG } from "./samples.ts";
import { documentOf } from "./store/flights.ts";
import type { FlightRow } from "./store/schema.ts";

export interface Observed {
  readonly flights: readonly ObservedFlight[];
  /** All of them are made up: there are no others. */
  readonly areMadeUp: boolean;
  /** Flights that are made up and left out. */
  readonly leftOut: number;
}

/** Null until all are read. */
export const observed = signal<Observed | null>(null);

const known = new Map<string, ObservedFlight>();

async function observe(row: FlightRow): Promise<ObservedFlight | null> {
  const { id, pilot, aircraft } = row;
  const state = `${id} ${row.changed} ${row.analysis}`;
  const before = known.get(state);
  if (before) return before;
  const document = await orSay(documentOf(id));
  if (!document) return null;
  const flight = observeFlight(document, { id, pilot, aircraft });
  known.set(state, flight);
  return flight;
}

/** Flights worked out, without the made-up ones where there are others. */
function chosen(rows: readonly FlightRow[]): {
  rows: readonly FlightRow[];
  areMadeUp: boolean;
  leftOut: number;
} {
  const worked = rows.filter((row) => row.summary !== null);
  const own = worked.filter((row) => !row.tags.includes(SAMPLE_TAG));
  return own.length > 0
    ? { rows: own, areMadeUp: false, leftOut: worked.length - own.length }
    : { rows: worked, areMadeUp: worked.length > 0, leftOut: 0 };
}

let turn = 0;

/** Reads what is not known yet; a later call overtakes this one. */
export async function observeAll(): Promise<void> {
  const mine = ++turn;
  const { rows, areMadeUp, leftOut } = chosen(standing.value);
  const flights: ObservedFlight[] = [];
  for (const row of rows) {
    const flight = await observe(row);
    if (mine !== turn) return;
    if (flight) flights.push(flight);
  }
  observed.value = { flights, areMadeUp, leftOut };
}
