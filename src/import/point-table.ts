/** A point list as a table: a line of headings, then a row a point or a runway. */
import {
  ASSUMED_RUNWAY_FT,
  type ListedPoint,
  type ListedRunway,
  type Position,
  runwayEnd,
  UNDATED,
  variationAt,
} from "../geodesy/index.ts";
import { trueFromMagnetic } from "../quantity/angle.ts";
import { readAngle } from "./csv-angle.ts";
import { DELIMITERS, type Delimiter, splitLine } from "./csv-split.ts";
import {
  type PointColumn,
  type PointFields,
  pointFields,
  readDeclination,
  readFeet,
  readKind,
  readRunwayCourse,
} from "./point-columns.ts";
import { runwayDoubts } from "./runway-doubt.ts";
import type { Tally } from "./tally.ts";

/** Lines before the headings that may say other things. */
const PREAMBLE = 50;

/** The far end of a runway: as written, or by its course and length. */
type FarEnd = Pick<ListedRunway, "end" | "lengthAssumed">;

/**
 * Columns: ident, lat, lon; perhaps kind, elevation (feet unless the heading says m), declination (east positive, or
 * E and W). A runway has its far end (end lat, end lon), or a course (magnetic unless marked T) and a length. "22/04" with both
 * ends gives both landing directions. Counted: `unreadable-place` and `place-without-ident` (row left out),
 * `unreadable-value`, `unknown-kind` (kept as another point); `runway-without-direction` (kept as a point), `runway-length-assumed`; noted:
 * `runway-course-by-model`; doubted: `runway-off-its-number`, `runway-too-long`.
 */
export class PointTable {
  readonly points: ListedPoint[] = [];
  readonly runways: ListedRunway[] = [];
  private fields: PointFields | null = null;
  private headings: readonly string[] = [];
  private delimiter: Delimiter = ",";
  private readonly tally: Tally;
  constructor(tally: Tally) {
    this.tally = tally;
  }

  /** False until the line of headings has come. */
  get headed(): boolean {
    return this.fields !== null;
  }

  readLine(text: string, line: number): void {
    if (this.fields === null) {
      if (line <= PREAMBLE) this.findHeadings(text);
      return;
    }
    if (text.startsWith("#")) return;
    const row = splitLine(text, this.delimiter);
    if (row.every((field) => field === "")) return;
    if (row.every((field, i) => field === (this.headings[i] ?? ""))) return; // again
    this.take(row, line);
  }

  private findHeadings(text: string): void {
    for (const delimiter of DELIMITERS) {
      const headings = splitLine(text.replace(/^[#\s\ufeff]+/, ""), delimiter);
      const fields = pointFields(headings);
      if (!fields.has("ident") || !fields.has("latitude") || !fields.has("longitude")) continue;
      this.fields = fields;
      this.headings = headings;
      this.delimiter = delimiter;
      return;
    }
  }

  private take(row: readonly string[], line: number): void {
    const place = { line, column: 0, point: -1 };
    const at = this.placeIn(row, "latitude", "longitude");
    if (at === null) {
      const [lat, lon] = [this.text(row, "latitude"), this.text(row, "longitude")];
      this.tally.add("unreadable-place", "warning", place, {
        facts: { lat: lat.slice(0, 40), lon: lon.slice(0, 40) },
      });
      return;
    }
    const ident = this.text(row, "ident");
    if (ident === "") {
      this.tally.add("place-without-ident", "warning", place);
      return;
    }
    const end = this.placeIn(row, "endLatitude", "endLongitude");
    const kindText = this.text(row, "kind");
    const { kind: written, known } = readKind(kindText);
    if (!known)
      this.tally.add("unknown-kind", "warning", place, {
        facts: { kind: kindText.slice(0, 40) },
      });
    const course = this.text(row, "course");
    const isRunway = written === "runway" || end !== null || (course !== "" && !this.fields!.has("kind"));
    const elevation = this.feet(row, "elevation", line);
    const declination = this.value(row, "declination", line, (text) =>
      readDeclination(text, this.delimiter !== ","),
    );
    const point: ListedPoint = {
      ...at,
      ident,
      kind: isRunway ? "runway" : written,
      declination,
      elevation,
    };
    this.points.push(point);
    if (!isRunway) return;
    const far = end ? { end } : this.farEnd(row, point, line);
    if (far === null) this.tally.add("runway-without-direction", "warning", place, { facts: { ident } });
    else this.addRunway(point, far, end === null ? null : this.feet(row, "endElevation", line), line);
  }

  /** "LIND 22/04" with two ends is two landing directions, each named with what stands before. */
  private addRunway(
    point: ListedPoint,
    { end, ...assumed }: FarEnd,
    endElevation: number | null,
    line: number,
  ): void {
    const threshold: Position = { latitude: point.latitude, longitude: point.longitude };
    const { ident, elevation } = point;
    for (const { code, facts } of runwayDoubts(point, end))
      this.tally.add(code, "warning", { line, column: 0, point: -1 }, { facts, detail: ident });
    const both = /^(.*?)(\d{1,2}[LRC]?)\s*[/-]\s*(\d{1,2}[LRC]?)$/i.exec(ident);
    if (both === null) {
      this.runways.push({ ident, threshold, end, elevation, ...assumed });
      return;
    }
    const [, field = "", here, there] = both;
    this.runways.push({ ident: `${field}${here}`, threshold, end, elevation, ...assumed });
    this.runways.push({
      ident: `${field}${there}`,
      threshold: end,
      end: threshold,
      elevation: endElevation ?? elevation,
      ...assumed,
    });
  }

  private farEnd(row: readonly string[], point: ListedPoint, line: number): FarEnd | null {
    const place = { line, column: 0, point: -1 };
    const course = readRunwayCourse(this.text(row, "course"), this.delimiter !== ",");
    if (course === null) return null;
    let { degrees } = course;
    if (course.reference === "magnetic") {
      const model = point.declination === null ? variationAt(point, UNDATED) : null;
      const variation = point.declination ?? model?.degrees ?? null;
      if (variation === null) return null;
      if (model !== null) {
        const facts = { ident: point.ident, model: model.model, degrees: model.degrees };
        this.tally.add("runway-course-by-model", "note", place, { facts });
      }
      degrees = trueFromMagnetic(degrees, variation);
    }
    const length = this.feet(row, "length", line);
    if (length === null || length <= 0) {
      const facts = { ident: point.ident, lengthFt: ASSUMED_RUNWAY_FT };
      this.tally.add("runway-length-assumed", "warning", place, { facts });
      return { end: runwayEnd(point, degrees, ASSUMED_RUNWAY_FT), lengthAssumed: true };
    }
    return { end: runwayEnd(point, degrees, length) };
  }

  private text(row: readonly string[], column: PointColumn): string {
    const field = this.fields!.get(column);
    return field === undefined ? "" : (row[field.index] ?? "");
  }

  private placeIn(row: readonly string[], lat: PointColumn, lon: PointColumn): Position | null {
    const [latitude, longitude] = [readAngle(this.text(row, lat)), readAngle(this.text(row, lon))];
    return Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 ? { latitude, longitude } : null;
  }

  private feet(row: readonly string[], column: PointColumn, line: number): number | null {
    const field = this.fields!.get(column);
    return this.value(row, column, line, (text) => readFeet(text, field!, this.delimiter !== ","));
  }

  /** Null where empty, or unreadable (then counted). */
  private value(
    row: readonly string[],
    column: PointColumn,
    line: number,
    read: (text: string) => number,
  ): number | null {
    const text = this.text(row, column);
    if (text === "") return null;
    const value = read(text);
    if (!Number.isNaN(value)) return value;
    const facts = { element: column, value: text.slice(0, 40) };
    this.tally.add("unreadable-value", "warning", { line, column: 0, point: -1 }, { facts, detail: column });
    return null;
  }
}
