/** The beginning of a table, for a person to say which column is which where its headings do not tell. */
import { meaningOf } from "./csv-columns.ts";
import { DELIMITERS, splitLine } from "./csv-split.ts";
import { decoderFor } from "./decode.ts";
import type { CsvColumn } from "./imported.ts";

/** Rows shown: enough to tell headings from values, and what changes from what does not. */
const ROWS = 6;
/** A row of points has two numbers at least. */
const LEAST_NUMBERS = 2;
const NUMBER = /^[-+]?\d+(?:[.,]\d+)?$/;

export interface TableBeginning {
  /** The first rows, headings first where there are any. All are as long as the longest. */
  readonly rows: readonly (readonly string[])[];
  /** What the headings tell of each column; null where they do not. */
  readonly meanings: readonly (CsvColumn | null)[];
}

/**
 * The rows of a table among some lines: from the row before the first two with as many fields and two numbers each.
 * Null where no two neighbouring lines are such rows.
 */
export function tableRows(lines: readonly string[]): string[][] | null {
  for (const delimiter of DELIMITERS) {
    const rows = lines.map((line) => splitLine(line, delimiter));
    const isPoint = (row: readonly string[] | undefined) =>
      row !== undefined && row.filter((field) => NUMBER.test(field)).length >= LEAST_NUMBERS;
    const first = rows.findIndex(
      (row, i) => isPoint(row) && isPoint(rows[i + 1]) && row.length === rows[i + 1]!.length,
    );
    if (first < 0) continue;
    const headed = first > 0 && rows[first - 1]!.length === rows[first]!.length;
    return rows.slice(headed ? first - 1 : first);
  }
  return null;
}

/** From the first bytes of a file, as `tableBeginning`. */
export const beginningOfTable = (head: Uint8Array): TableBeginning | null =>
  tableBeginning(decoderFor(head).decode(head));

/** From the decoded beginning of a file; null where it is no table. The last line may be cut and is left out. */
export function tableBeginning(text: string): TableBeginning | null {
  const lines = text.split(/\r\n|\r|\n/);
  const whole = lines.length > 2 ? lines.slice(0, -1) : lines;
  const rows = tableRows(whole.filter((line) => line.trim() !== ""))?.slice(0, ROWS);
  if (!rows) return null;
  const width = Math.max(...rows.map((row) => row.length));
  const meanings = Array.from({ length: width }, (_, i) => {
    const meaning = meaningOf(rows[0]![i] ?? "");
    return meaning === null || meaning === "unclear" ? null : meaning.column;
  });
  return { rows: rows.map((row) => Array.from({ length: width }, (_, i) => row[i] ?? "")), meanings };
}
