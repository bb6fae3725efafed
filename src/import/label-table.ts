/** Who flew what: a table beside the flights, with the columns file, pilot and aircraft. */
import { dsvFormat } from "d3-dsv";

export interface FlightLabel {
  /** The name of the flight's file, with / between folders. */
  readonly file: string;
  readonly pilot: string | null;
  readonly aircraft: string | null;
}

export interface LabelTable {
  readonly labels: readonly FlightLabel[];
  /** The column without which it is no such table; null where it is one. */
  readonly lacks: "file" | "pilot or aircraft" | null;
}

const heading = (cell: string): string => cell.trim().toLowerCase();
const plainText = (text: string): string => text.replace(/^\uFEFF/, "");
/** A spreadsheet of a country with decimal commas parts by semicolons. */
const rowsOf = (text: string): string[][] => {
  const first = text.slice(0, text.search(/[\r\n]|$/));
  return dsvFormat(first.includes(";") ? ";" : ",").parseRows(text);
};

function lacking(headings: readonly string[]): LabelTable["lacks"] {
  if (!headings.includes("file")) return "file";
  return headings.includes("pilot") || headings.includes("aircraft") ? null : "pilot or aircraft";
}

/** Whether a file begins as such a table does. */
export function isLabelTable(beginning: string): boolean {
  const [first = []] = rowsOf(plainText(beginning));
  return lacking(first.map(heading)) === null;
}

/** Rows without the name of a file are left out; an empty cell is null. */
export function readLabelTable(text: string): LabelTable {
  const [first = [], ...rows] = rowsOf(plainText(text));
  const headings = first.map(heading);
  const cell = (row: readonly string[], of: string): string => (row[headings.indexOf(of)] ?? "").trim();
  const labels = rows.flatMap((row): FlightLabel[] => {
    const file = cell(row, "file").replaceAll("\\", "/");
    const [pilot, aircraft] = [cell(row, "pilot") || null, cell(row, "aircraft") || null];
    return file === "" ? [] : [{ file, pilot, aircraft }];
  });
  return { labels, lacks: lacking(headings) };
}
