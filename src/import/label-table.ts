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
  /** Its first line, as it is written. */
  readonly headings: readonly string[];
}

const heading = (cell: string): string => cell.trim().toLowerCase();
const plainText = (text: string): string => text.replace(/^\uFEFF/, "");
/** A spreadsheet of a country with decimal commas parts by semicolons. */
const rowsOf = (text: string): string[][] => {
  const first = text.slice(0, text.search(/[\r\n]|$/));
  const delimiter = [";", "\t"].find((sign) => first.includes(sign)) ?? ",";
  return dsvFormat(delimiter).parseRows(text);
};

const namesPeople = (headings: readonly string[]): boolean =>
  headings.includes("pilot") || headings.includes("aircraft");

function lacking(headings: readonly string[]): LabelTable["lacks"] {
  if (!headings.includes("file")) return "file";
  return namesPeople(headings) ? null : "pilot or aircraft";
}

/** Whether a file begins as such a table does, or as one that lacks a column of it: a log has places. */
export function isLabelTable(beginning: string): boolean {
  const [first = []] = rowsOf(plainText(beginning));
  const headings = first.map(heading);
  if (lacking(headings) === null) return true;
  const isHalf = headings.length > 1 && (headings.includes("file") || namesPeople(headings));
  return isHalf && !headings.some((name) => name.startsWith("lat"));
}

/** A name as a table of any system writes it. */
const fileName = (cell: string): string => cell.replaceAll("\\", "/").replace(/^(?:\.\/)+/, "");

/** Rows without the name of a file are left out; an empty cell is null. */
export function readLabelTable(text: string): LabelTable {
  const [first = [], ...rows] = rowsOf(plainText(text));
  const headings = first.map(heading);
  const cell = (row: readonly string[], of: string): string => (row[headings.indexOf(of)] ?? "").trim();
  const labels = rows.flatMap((row): FlightLabel[] => {
    const file = fileName(cell(row, "file"));
    const [pilot, aircraft] = [cell(row, "pilot") || null, cell(row, "aircraft") || null];
    return file === "" ? [] : [{ file, pilot, aircraft }];
  });
  return { labels, lacks: lacking(headings), headings: first.map((name) => name.trim()) };
}
