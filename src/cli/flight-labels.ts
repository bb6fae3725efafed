/** Who flew what: a table beside the flights, with the columns file, pilot and aircraft. */
import { readFile } from "node:fs/promises";
import { type LabelledFiles, labelledFiles, readLabelTable } from "../index.ts";
import { UnusableFile } from "./output.ts";

export interface Labels {
  readonly pilot: string | null;
  readonly aircraft: string | null;
}

/** The table that is read where none is named. */
export const LABELS = "flights.csv";

/** A table of labels that lacks what it needs. */
function lacking(path: string, column: string, headings: readonly string[]): UnusableFile {
  const has = headings.some((name) => name !== "") ? `: “${headings.join("”, “")}”` : ", which is empty";
  const why = `no column “${column}” stands in its first line${has}; it is to name file, pilot and aircraft`;
  return new UnusableFile(path, "read", new Error(why));
}

/** More would hide the rest. */
const MOST_NAMED = 5;

const listed = (names: readonly string[]): string =>
  names.length > MOST_NAMED
    ? `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more`
    : names.join(", ");

/** What there is to say of a table, a line each. */
function notesOn(path: string, { unknown, unclear, twice, otherwise }: LabelledFiles): string[] {
  const capitals = otherwise.map(({ file, written }) => `${written} for ${file}`);
  return [
    ...(capitals.length > 0
      ? [`${path}: capitals do not matter in the names of files; taken were ${listed(capitals)}`]
      : []),
    ...(twice.length > 0 ? [`${path}: in more than one line, which say the same: ${listed(twice)}`] : []),
    ...(unclear.length > 0
      ? [
          `${path}: which line or which file is meant cannot be told, so that it names nobody for ${listed(unclear)}`,
        ]
      : []),
    ...(unknown.length > 0 ? [`${path}: of no flight in the folder: ${listed(unknown)}`] : []),
  ];
}

export interface FolderLabels {
  /** By the name of the flight's file. */
  readonly byFile: ReadonlyMap<string, Labels>;
  readonly notes: readonly string[];
}

/** Labels of these files; none where the table is not there and nobody asked for it. @throws UnusableFile */
export async function readLabels(
  path: string,
  asked: boolean,
  files: readonly string[],
): Promise<FolderLabels> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    if (!asked && (error as NodeJS.ErrnoException).code === "ENOENT") return { byFile: new Map(), notes: [] };
    throw new UnusableFile(path, "read", error as NodeJS.ErrnoException);
  }
  const { labels, lacks, headings } = readLabelTable(text);
  if (lacks) throw lacking(path, lacks, headings);
  const labelled = labelledFiles(files, labels);
  return { byFile: labelled.byFile, notes: notesOn(path, labelled) };
}
