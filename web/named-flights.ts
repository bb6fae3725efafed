/** A table of who flew what, dropped on the page: written on the flights whose files it names. */
import { type FlightLabel, isLabelTable, shownName } from "../src/index.ts";
import { flightsWords } from "./outcome-words.ts";
import { BEGINNING_BYTES } from "./sorting.ts";
import type { FlightRow } from "./store/schema.ts";

export const isNamingTable = async (file: Blob): Promise<boolean> =>
  isLabelTable(await file.slice(0, BEGINNING_BYTES).text());

export interface NamedFlights {
  /** By the id of the flight. */
  readonly labels: ReadonlyMap<string, FlightLabel>;
  /** Files of no flight. */
  readonly unknown: readonly string[];
  /** Names that several lines give to different people or aircraft: which is meant nobody knows. */
  readonly unclear: readonly string[];
}

/** The page knows files by their names, without the folders that they lay in. */
const ownName = (file: string): string => file.slice(file.lastIndexOf("/") + 1);

/** Whose line is whose flight. */
export function namedFlights(
  rows: readonly Pick<FlightRow, "id" | "fileNames">[],
  labels: readonly FlightLabel[],
): NamedFlights {
  const byName = new Map<string, FlightLabel>();
  const differ = new Set<string>();
  for (const line of labels) {
    const name = ownName(line.file);
    const { pilot, aircraft } = byName.get(name) ?? line;
    if (pilot !== line.pilot || aircraft !== line.aircraft) differ.add(name);
    byName.set(name, line);
  }
  for (const name of differ) byName.delete(name);
  const named = new Map<string, FlightLabel>();
  const met = new Set<string>();
  for (const { id, fileNames } of rows) {
    for (const name of fileNames) {
      const line = byName.get(name);
      if (!line) continue;
      met.add(name);
      if (!named.has(id)) named.set(id, line);
    }
  }
  return {
    labels: named,
    unknown: [...byName.keys()].filter((name) => !met.has(name)),
    unclear: [...differ],
  };
}

/** Files given together, the tables among them apart. */
export async function tablesApart(
  files: readonly File[],
): Promise<{ readonly files: readonly File[]; readonly tables: readonly File[] }> {
  const are = await Promise.all(files.map(isNamingTable));
  return { files: files.filter((_, i) => !are[i]), tables: files.filter((_, i) => are[i]) };
}

/** More would hide the page. */
const MOST_NAMED = 3;

function listed(names: readonly string[]): string {
  const first = names.slice(0, MOST_NAMED).map(shownName).join(", ");
  return names.length > MOST_NAMED ? `${first} and ${names.length - MOST_NAMED} more` : first;
}

/** What came of a table. */
export function namingWords(name: string, { labels, unknown, unclear }: NamedFlights): string[] {
  return [
    `${shownName(name)}: pilot and aircraft written on ${labels.size === 0 ? "no flight" : flightsWords(labels.size)} of the logbook.`,
    ...(unknown.length > 0
      ? [`It names ${unknown.length} of no flight in the logbook: ${listed(unknown)}.`]
      : []),
    ...(unclear.length > 0
      ? [`It gives different names to files called alike, which were left as they are: ${listed(unclear)}.`]
      : []),
  ];
}
