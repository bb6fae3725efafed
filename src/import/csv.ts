/** Delimited text with a line of headings: one row a point. */
import { direction } from "../quantity/angle.ts";
import { utcText } from "../quantity/time.ts";
import { GrowingColumns, OPTIONAL_COLUMNS, type OptionalColumn } from "./columns.ts";
import { readAngle } from "./csv-angle.ts";
import { type Chosen, type Fields, fieldsOf, unclearHeadings } from "./csv-fields.ts";
import { readTableNumber } from "./csv-number.ts";
import { DELIMITERS, type Delimiter, splitLine } from "./csv-split.ts";
import { CsvTimeReader } from "./csv-time.ts";
import type { CsvColumn, ReadOptions } from "./imported.ts";
import type { Found, LineLogReader } from "./log-reader.ts";
import { plausibleSpeeds } from "./plausible.ts";
import type { Tally } from "./tally.ts";

/** Lines before the headings that may say other things. */
const PREAMBLE = 50;
const SIDES = { latitude: /^[NS]$/i, longitude: /^[EW]$/i } as const;
const WHOLE = /^[-+]?\d+$/;
const ANGLES = new Set<string>(["trackAngle", "headingTrue", "headingMagnetic"]);

/**
 * The line of headings is the first with a latitude and a longitude (or with what the option names); the delimiter
 * is the one that finds them; a row of units may follow. Decimal commas are read where the delimiter is another, places also with hemispheres, minutes and seconds.
 * Units stand in the headings or beneath them; where not, feet, knots and degrees Celsius are taken (metres for
 * "elevation" and "height") and said (`unit-assumed`). A plain "heading" or "course" is not used, for it says neither
 * true nor magnetic (`unclear-column`). Speeds that do not fit the way flown are refused (`implausible-column`).
 * With heading and true airspeed the wind is measured, not estimated.
 * Counted: `unreadable-position` and `too-many-commas` (row left out), `unreadable-time`, `unreadable-value`. Noted: `time-without-zone`,
 * `no-date`.
 */
export class CsvReader implements LineLogReader {
  private readonly columns = new GrowingColumns();
  private readonly times = new CsvTimeReader();
  private readonly tally: Tally;
  private readonly chosen: Chosen;
  private delimiter: Delimiter = ",";
  private headings: string[] | null = null;
  private fields: Fields = new Map();
  private unitsMayFollow = false;
  private seen = 0;

  constructor(tally: Tally, chosen: ReadOptions["csvColumns"]) {
    this.tally = tally;
    this.chosen = chosen ?? {};
  }

  readLine(text: string, line: number): void {
    if (this.headings === null) {
      if (line > PREAMBLE || !this.findHeadings(text)) return;
      // Columns chosen by number need no headings: a first line of numbers is a point.
      const row = splitLine(text, this.delimiter);
      if (["latitude", "longitude"].every((c) => !Number.isNaN(readAngle(this.text(row, c as CsvColumn))))) {
        this.headings = row.map(() => "");
        this.point(row, line);
      }
      return;
    }
    if (text.startsWith("#")) return;
    const row = splitLine(text, this.delimiter);
    if (row.every((field) => field === "")) return;
    if (row.length === this.headings.length && row.every((field, i) => field === this.headings![i])) return; // again
    if (this.unitsMayFollow) {
      this.unitsMayFollow = false;
      if (!row.some((field) => /\d/.test(field))) {
        this.fields = fieldsOf(this.headings, row, this.chosen);
        return;
      }
    }
    this.point(row, line);
  }

  finish(file: string): Found {
    const nowhere = { line: 0, column: 0, point: -1 };
    if (this.headings === null)
      this.tally.add("no-headings", "error", { ...nowhere, line: 1 }, { facts: { looked: PREAMBLE } });
    for (const { meaning } of this.fields.values()) {
      if (meaning.assumed === null) continue;
      const facts = { column: meaning.heading.slice(0, 40), unit: meaning.assumed };
      this.tally.add("unit-assumed", "warning", nowhere, { facts, detail: meaning.column });
    }
    for (const heading of unclearHeadings(this.headings ?? [], this.fields)) {
      this.tally.add("unclear-column", "note", nowhere, {
        facts: { column: heading.slice(0, 40) },
        detail: heading,
      });
    }
    const track = plausibleSpeeds(this.columns.finish(file, "csv"), this.tally);
    return { track, waypoints: [], routes: [], pointsSeen: this.seen };
  }

  /** Whether this is the line of headings, or where columns are chosen by number, the first that has them. */
  private findHeadings(text: string): boolean {
    for (const delimiter of DELIMITERS) {
      const headings = splitLine(text.replace(/^[#\s]+/, ""), delimiter);
      const fields = fieldsOf(headings, [], this.chosen);
      if (!fields.has("latitude") || !fields.has("longitude")) continue;
      this.fields = fields;
      this.headings = headings;
      this.delimiter = delimiter;
      this.unitsMayFollow = true;
      return true;
    }
    return false;
  }

  /** A place as written, with its hemisphere where that stands in the column beside it. */
  private place(row: readonly string[], column: "latitude" | "longitude"): string {
    const text = this.text(row, column);
    const { index } = this.fields.get(column)!;
    const side = [row[index + 1], row[index - 1]].find((field) => field && SIDES[column].test(field));
    return side === undefined || /[NSEW]/i.test(text) ? text : text + side;
  }

  private degrees(text: string, column: "latitude" | "longitude"): number {
    return this.fields.get(column)!.meaning.convert(readAngle(text));
  }

  /** More values than headings, as decimal commas between commas make: which belong together is not known. */
  private grownTooLong(row: readonly string[]): boolean {
    return this.delimiter === "," && row.slice(this.headings!.length).some((field) => field !== "");
  }

  private text(row: readonly string[], column: CsvColumn): string {
    const field = this.fields.get(column);
    return field === undefined ? "" : (row[field.index] ?? "");
  }

  /** The column's number in the track's unit; NaN where empty, or unreadable (then counted). */
  private number(row: readonly string[], column: CsvColumn, line: number): number {
    const text = this.text(row, column);
    if (text === "") return Number.NaN;
    const value = readTableNumber(text, this.delimiter !== ",");
    if (Number.isNaN(value)) {
      const facts = { element: column, value: text.slice(0, 40) };
      this.tally.add(
        "unreadable-value",
        "warning",
        { line, column: 0, point: this.seen - 1 },
        { facts, detail: column },
      );
      return value;
    }
    return this.fields.get(column)!.meaning.convert(value);
  }

  private point(row: readonly string[], line: number): void {
    const place = { line, column: 0, point: this.seen++ };
    const [lat, lon] = [this.place(row, "latitude"), this.place(row, "longitude")];
    if (this.grownTooLong(row) && WHOLE.test(lat) && WHOLE.test(lon)) {
      const facts = { values: row.length, columns: this.headings!.length };
      this.tally.add("too-many-commas", "warning", place, { dropped: 1, facts });
      return;
    }
    const [latitude, longitude] = [this.degrees(lat, "latitude"), this.degrees(lon, "longitude")];
    if (Number.isNaN(latitude) || Number.isNaN(longitude)) {
      const facts = { lat: lat.slice(0, 40), lon: lon.slice(0, 40) };
      this.tally.add("unreadable-position", "warning", place, { dropped: 1, facts });
      return;
    }
    this.columns.push(this.time(row, place), latitude, longitude, this.number(row, "altitude", line), line);
    for (const column of OPTIONAL_COLUMNS) {
      if (!this.fields.has(column as CsvColumn)) continue;
      const value = this.number(row, column as CsvColumn, line);
      if (!Number.isNaN(value))
        this.columns.set(column as OptionalColumn, ANGLES.has(column) ? direction(value) : value);
    }
  }

  private time(row: readonly string[], place: { line: number; column: number; point: number }): number {
    let [time, date] = [this.text(row, "time"), this.text(row, "date")];
    if (time === "" && /\d:\d/.test(date)) [time, date] = [date, ""]; // a "date" with the clock in it
    if (time === "") return Number.NaN;
    const meaning = this.fields.get("time")?.meaning;
    const { times } = this;
    const toMillis = meaning?.counts ? meaning.convert : null;
    const value = times.read(time, date, this.text(row, "utcOffset"), toMillis);
    if (Number.isNaN(value)) {
      const facts = { time: `${date} ${time}`.trim().slice(0, 40) };
      this.tally.add("unreadable-time", "warning", place, { facts });
      return value;
    }
    if (!times.zoned) this.tally.add("time-without-zone", "note", place);
    if (times.eitherWay !== null)
      this.tally.add("ambiguous-date", "warning", place, {
        facts: { date: times.eitherWay, read: utcText(value).slice(0, 10) },
      });
    if (!times.dated && date !== "")
      this.tally.add("unreadable-date", "warning", place, {
        facts: { date: date.slice(0, 40), form: "2026-10-17" },
      });
    else if (!times.dated) this.tally.add("no-date", "warning", place);
    return value;
  }
}
