/** `--column quantity=heading`: which column of a table is which, where its headings do not tell. */
import { InvalidArgumentError, Option } from "commander";
import { CSV_COLUMNS, type CsvColumn } from "../index.ts";

export type Columns = Partial<Record<CsvColumn, string>>;

const dashed = (column: CsvColumn): string => column.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
const NAMES = new Map(CSV_COLUMNS.map((column) => [dashed(column), column]));

function read(text: string, before: Columns = {}): Columns {
  const equals = text.indexOf("=");
  const column = NAMES.get(text.slice(0, Math.max(0, equals)).trim());
  const heading = text.slice(equals + 1).trim();
  if (column === undefined || heading === "") {
    throw new InvalidArgumentError(
      `write quantity=heading, as in latitude=Breite; quantities are ${[...NAMES.keys()].join(", ")}.`,
    );
  }
  return { ...before, [column]: heading };
}

export const columnOption = (): Option =>
  new Option(
    "--column <quantity=heading>",
    `of a table (CSV): which column is which, by its heading or its number from 1, a unit in brackets behind it, as in "altitude=4 [m]"; may be given again. Quantities: ${[...NAMES.keys()].join(", ")}`,
  ).argParser(read);
