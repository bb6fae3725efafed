/** The rows of the logbook as this tab knows them, and which of them are looked for. */
import { computed, signal } from "@preact/signals";
import { orSay } from "./flight.ts";
import { EVERYTHING, listed, type Search, valuesOf } from "./listing.ts";
import { flightRows } from "./store/flights.ts";
import { onChange } from "./store/news.ts";
import type { FlightRow } from "./store/schema.ts";

/** All rows, those in the bin too; null until they have been read. */
export const rows = signal<readonly FlightRow[] | null>(null);
export const search = signal<Search>(EVERYTHING);
/** Ids of the rows that are ticked. */
export const ticked = signal<ReadonlySet<string>>(new Set());

export const standing = computed(() => (rows.value ?? []).filter((row) => row.deleted === null));
export const inBin = computed(() => (rows.value ?? []).filter((row) => row.deleted !== null));
/** Names and tags given so far. */
export const pilots = computed(() => valuesOf(standing.value, (row) => [row.pilot]));
export const aircraft = computed(() => valuesOf(standing.value, (row) => [row.aircraft]));
export const tags = computed(() => valuesOf(standing.value, (row) => row.tags));
export const found = computed(() => listed(standing.value, search.value));

/** Who flew a flight of the logbook, and in what; null where nobody said either. */
export function flownBy(id: string): { pilot: string; aircraft: string } | null {
  const row = rows.peek()?.find((one) => one.id === id);
  return row && (row.pilot || row.aircraft) ? { pilot: row.pilot, aircraft: row.aircraft } : null;
}

/** While many flights are worked out, the list follows this often. Chosen: often enough to see it move. */
const FOLLOW_MS = 400;

async function read(): Promise<void> {
  rows.value = (await orSay(flightRows())) ?? rows.value ?? [];
}

/** Reads the rows, and again after every change in whatever tab; settles once they stand. */
export function followRows(): Promise<void> {
  let waiting = false;
  onChange((what) => {
    if (what !== "flights" || waiting) return;
    waiting = true;
    setTimeout(() => {
      waiting = false;
      void read();
    }, FOLLOW_MS);
  });
  return read();
}

/** Reads the rows at once, where the reader has just changed them. */
export const readRows = read;
