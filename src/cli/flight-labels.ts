/** Who flew what: a table beside the flights, with the columns file, pilot and aircraft. */
import { readFile } from "node:fs/promises";
import { readLabelTable } from "../index.ts";
import { UnusableFile } from "./output.ts";

export interface Labels {
  readonly pilot: string | null;
  readonly aircraft: string | null;
}

/** The table that is read where none is named. */
export const LABELS = "flights.csv";

/** A table of labels that lacks what it needs. */
const lacking = (path: string, column: string): UnusableFile =>
  new UnusableFile(
    path,
    "read",
    Object.assign(
      new Error(`it has no column ${column}; its first line is to name file, pilot and aircraft`),
    ),
  );

/** Labels by the name of the flight's file; empty where the table is not there and nobody asked for it. */
export async function readLabels(path: string, asked: boolean): Promise<ReadonlyMap<string, Labels>> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    if (!asked && (error as NodeJS.ErrnoException).code === "ENOENT") return new Map();
    throw new UnusableFile(path, "read", error as NodeJS.ErrnoException);
  }
  const { labels, lacks } = readLabelTable(text);
  if (lacks) throw lacking(path, lacks);
  return new Map(labels.map(({ file, pilot, aircraft }) => [file, { pilot, aircraft }]));
}
