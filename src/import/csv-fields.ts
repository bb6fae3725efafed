/** Which field of a table's rows is which quantity: by its heading, or as the caller says. */
import { type Meaning, meaningOf } from "./csv-columns.ts";
import { CSV_COLUMNS, type CsvColumn, type ReadOptions } from "./imported.ts";

export type Chosen = NonNullable<ReadOptions["csvColumns"]>;
export type Fields = ReadonlyMap<CsvColumn, { readonly index: number; readonly meaning: Meaning }>;

/** "Höhe [m]" as a choice: the column and the unit that it is said to have. */
const WITH_UNIT = /^(.*?)\s*[([{]([^)\]}]*)[)\]}]\s*$/;

/** Which of the headings a choice names: by number from 1, as written, or without its unit. */
function chosenField(choice: string, headings: readonly string[]): { index: number; unit: string } | null {
  const [, name = choice.trim(), unit = ""] = WITH_UNIT.exec(choice) ?? [];
  // A number first: where a table has no headings, its first values must not be taken for some.
  if (/^[1-9]\d{0,3}$/.test(name) && Number(name) <= headings.length)
    return { index: Number(name) - 1, unit };
  const whole = headings.indexOf(choice.trim());
  if (whole >= 0) return { index: whole, unit: "" };
  const named = headings.indexOf(name);
  return named < 0 ? null : { index: named, unit };
}

/** The first column of each meaning counts; what is chosen comes before. `units` may stand in a row beneath. */
export function fieldsOf(headings: readonly string[], units: readonly string[], chosen: Chosen): Fields {
  const fields = new Map<CsvColumn, { readonly index: number; readonly meaning: Meaning }>();
  const taken = new Set<number>();
  for (const column of CSV_COLUMNS) {
    const field = chosen[column] === undefined ? null : chosenField(chosen[column], headings);
    if (field === null) continue;
    const heading = headings[field.index]!;
    const meaning = meaningOf(field.unit ? `[${field.unit}]` : heading, units[field.index], column);
    if (meaning === null || meaning === "unclear") continue;
    taken.add(field.index);
    fields.set(column, { index: field.index, meaning: { ...meaning, heading } });
  }
  headings.forEach((heading, index) => {
    if (taken.has(index)) return;
    const meaning = meaningOf(heading, units[index]);
    if (meaning === null || meaning === "unclear" || fields.has(meaning.column)) return;
    fields.set(meaning.column, { index, meaning });
  });
  return fields;
}

/** Headings that may mean several things, and that nobody chose. */
export const unclearHeadings = (headings: readonly string[], fields: Fields): string[] => {
  const used = new Set([...fields.values()].map(({ index }) => index));
  return headings.filter((heading, index) => !used.has(index) && meaningOf(heading) === "unclear");
};
