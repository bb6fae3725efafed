/** A table of who flew what, dropped on the page: written on the flights whose files it names. */
import {
  type FlightLabel,
  isLabelTable,
  type LabelledFiles,
  type LabelTable,
  labelledFiles,
  shownName,
} from "../src/index.ts";
import { flightsWords } from "./outcome-words.ts";
import { BEGINNING_BYTES } from "./sorting.ts";
import type { FlightRow } from "./store/schema.ts";

export const isNamingTable = async (file: Blob): Promise<boolean> =>
  isLabelTable(await file.slice(0, BEGINNING_BYTES).text());

export interface NamedFlights extends Omit<LabelledFiles, "byFile"> {
  /** By the id of the flight. */
  readonly labels: ReadonlyMap<string, FlightLabel>;
}

/** The page knows files by their names, without the folders that they lay in. */
const ownName = (file: string): string => file.slice(file.lastIndexOf("/") + 1);

/** Whose line is whose flight. */
export function namedFlights(
  rows: readonly Pick<FlightRow, "id" | "fileNames">[],
  labels: readonly FlightLabel[],
): NamedFlights {
  const { byFile, ...rest } = labelledFiles(
    rows.flatMap(({ fileNames }) => fileNames),
    labels.map((line) => ({ ...line, file: ownName(line.file) })),
  );
  const named = new Map<string, FlightLabel>();
  for (const { id, fileNames } of rows) {
    const line = fileNames.map((name) => byFile.get(name)).find((found) => found !== undefined);
    if (line) named.set(id, line);
  }
  return { labels: named, ...rest };
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
export function namingWords(
  name: string,
  { labels, unknown, unclear, twice, otherwise }: NamedFlights,
): string[] {
  return [
    `${shownName(name)}: pilot and aircraft written on ${labels.size === 0 ? "no flight" : flightsWords(labels.size)} of the logbook.`,
    ...(otherwise.length > 0
      ? [`Capitals do not matter in its names of files: ${listed(otherwise.map(({ file }) => file))}.`]
      : []),
    ...(twice.length > 0 ? [`In more than one of its lines, which say the same: ${listed(twice)}.`] : []),
    ...(unknown.length > 0
      ? [`It names ${unknown.length} of no flight in the logbook: ${listed(unknown)}.`]
      : []),
    ...(unclear.length > 0
      ? [`It gives different names to files called alike, which were left as they are: ${listed(unclear)}.`]
      : []),
  ];
}

/** A table that lacks a column, and what it has in its place. */
export const lackingWords = (name: string, { lacks, headings }: LabelTable): string =>
  `${shownName(name)}: no column “${lacks}” stands in its first line (${listed(headings)}). Whose flight is whose is told by the columns file, pilot and aircraft; nothing was written.`;
