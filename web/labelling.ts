/** Names and tags given to flights, and flights put into the bin and taken out of it. */
import { signal } from "@preact/signals";
import { readLabelTable } from "../src/index.ts";
import { orSay } from "./flight.ts";
import { carryLabels } from "./labels-on-the-way.ts";
import { readRows, ticked } from "./logbook.ts";
import { lackingWords, namedFlights, namingWords } from "./named-flights.ts";
import { changeRows, clearAway, flightRows } from "./store/flights.ts";
import type { FlightRow, Labels } from "./store/schema.ts";

/** Ids of the flights deleted last, until something else is done: they can be put back. */
export const justDeleted = signal<readonly string[]>([]);

/** What to write on several flights: an empty name leaves the one that stands. */
export interface Labelling {
  readonly pilot: string;
  readonly aircraft: string;
  readonly addTags: readonly string[];
  readonly dropTags: readonly string[];
}

export const labelled = (
  { pilot, aircraft, tags }: FlightRow,
  { pilot: newPilot, aircraft: newAircraft, addTags, dropTags }: Labelling,
): Labels => ({
  pilot: newPilot.trim() || pilot,
  aircraft: newAircraft.trim() || aircraft,
  tags: [...new Set([...tags, ...addTags])].filter((tag) => !dropTags.includes(tag)),
});

async function done(work: Promise<unknown>): Promise<void> {
  await orSay(work);
  await readRows();
}

export const labelAll = (ids: readonly string[], labelling: Labelling): Promise<void> =>
  done(changeRows(ids, (row) => labelled(row, labelling)));

export const labelOne = (id: string, labels: Partial<Labels>): Promise<void> => done(carryLabels(id, labels));

/** Writes on the flights of the logbook what tables say of their files; gives what there is to say of it. */
export async function writeNames(tables: readonly File[]): Promise<string[]> {
  const words: string[] = [];
  for (const table of tables) {
    const read = readLabelTable(await table.text());
    if (read.lacks) {
      words.push(lackingWords(table.name, read));
      continue;
    }
    const rows = await orSay(flightRows());
    if (!rows) break;
    const named = namedFlights(
      rows.filter((row) => row.deleted === null),
      read.labels,
    );
    await done(
      changeRows([...named.labels.keys()], ({ id, pilot, aircraft }) => {
        const line = named.labels.get(id);
        return { pilot: line?.pilot ?? pilot, aircraft: line?.aircraft ?? aircraft };
      }),
    );
    words.push(...namingWords(table.name, named));
  }
  return words;
}

export async function deleteFlights(ids: readonly string[]): Promise<void> {
  const now = Date.now();
  await done(changeRows(ids, () => ({ deleted: now })));
  ticked.value = new Set();
  justDeleted.value = ids;
}

export async function putBack(ids: readonly string[]): Promise<void> {
  await done(changeRows(ids, () => ({ deleted: null })));
  justDeleted.value = [];
}

/** For good. */
export async function emptyBin(ids: readonly string[]): Promise<void> {
  await done(clearAway(ids));
  justDeleted.value = [];
}
