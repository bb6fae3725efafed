/** What a column of a table may be said to be, as a reader chooses it, with the unit where it needs one. */
import type { CsvColumn } from "../src/index.ts";

export interface ColumnChoice {
  readonly id: string;
  readonly column: CsvColumn;
  readonly unit: string;
  readonly words: string;
}

const choice = (column: CsvColumn, words: string, unit = ""): ColumnChoice => ({
  id: unit ? `${column} ${unit}` : column,
  column,
  unit,
  words: unit ? `${words}, ${unit}` : words,
});

/** The first of a quantity is what its heading alone would mean. */
export const COLUMN_CHOICES: readonly ColumnChoice[] = [
  choice("latitude", "latitude"),
  choice("longitude", "longitude"),
  choice("time", "time, or date and time"),
  choice("date", "date"),
  choice("altitude", "altitude", "ft"),
  choice("altitude", "altitude", "m"),
  choice("pressureAltitude", "pressure altitude", "ft"),
  choice("groundSpeed", "ground speed", "kt"),
  choice("groundSpeed", "ground speed", "km/h"),
  choice("groundSpeed", "ground speed", "m/s"),
  choice("trackAngle", "track, true"),
  choice("headingTrue", "heading, true"),
  choice("headingMagnetic", "heading, magnetic"),
  choice("trueAirspeed", "true airspeed", "kt"),
  choice("trueAirspeed", "true airspeed", "km/h"),
  choice("indicatedAirspeed", "indicated airspeed", "kt"),
  choice("outsideAir", "outside air", "°C"),
];

/** Columns by number, as the reader of tables takes them. Of two columns chosen alike the first counts. */
export function chosenColumns(ids: readonly string[]): Partial<Record<CsvColumn, string>> {
  const columns: Partial<Record<CsvColumn, string>> = {};
  ids.forEach((id, i) => {
    const found = COLUMN_CHOICES.find((c) => c.id === id);
    if (found && columns[found.column] === undefined) {
      columns[found.column] = found.unit ? `${i + 1} [${found.unit}]` : `${i + 1}`;
    }
  });
  return columns;
}

/** What still has to be chosen, in words; empty where the table can be read. */
export function stillNeeded(ids: readonly string[]): string {
  const missing = ["latitude", "longitude"].filter((needed) => !ids.includes(needed));
  return missing.length > 0 ? `Choose the ${missing.join(" and the ")}.` : "";
}
