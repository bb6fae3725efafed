/** The exercises of all flights as one table. */
import { join } from "node:path";
import { csvFormat, csvParse } from "d3-dsv";
import { note } from "./output.ts";
import { writeWhole } from "./write-whole.ts";

interface Flown {
  readonly pilot: string | null;
  readonly aircraft: string | null;
}

/** The rows of a flight with its pilot and aircraft, which were learned later. */
export function relabelled(csv: string, { pilot, aircraft }: Flown): string {
  const rows = csvParse(csv);
  for (const row of rows) Object.assign(row, { pilot: pilot ?? "", aircraft: aircraft ?? "" });
  return `${csvFormat(rows, rows.columns)}\n`;
}

/** Each with a line of headings, the same in all. */
export async function writeExercises(folder: string, csvs: readonly string[]): Promise<void> {
  const path = join(folder, "exercises.csv");
  const bodies = csvs.map((csv, i) => (i === 0 ? csv : csv.slice(csv.indexOf("\n") + 1)));
  await writeWhole(path, bodies.join(""));
  note(`wrote ${path}`);
}
