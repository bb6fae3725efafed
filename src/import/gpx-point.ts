/** The values of one GPX point while it is read; one object serves all points of a file. */
import { direction } from "../quantity/angle.ts";
import { feetFromMetres, knotsFromMetresPerSecond } from "../quantity/factor.ts";
import type { GrowingColumns, OptionalColumn } from "./columns.ts";
import { readDecimal } from "./decimal.ts";
import { OddTimeReader } from "./odd-time.ts";
import type { Tally } from "./tally.ts";
import type { XmlStream } from "./xml-stream.ts";

/** The elements of a point whose text is read. */
export type PointElement = "ele" | "time" | "hdop" | "speed" | "course" | "fix" | "sat";

export class GpxPoint {
  /** Counts the file's points from 0. */
  private index = -1;
  private line = 0;
  private latitude = Number.NaN;
  private longitude = Number.NaN;
  private altitude = Number.NaN;
  private time = Number.NaN;
  private hdop = Number.NaN;
  private speed = Number.NaN;
  private course = Number.NaN;
  private satellites = Number.NaN;
  private fixed = true;
  private readonly times = new OddTimeReader();
  private readonly at: XmlStream;
  private readonly tally: Tally;

  constructor(at: XmlStream, tally: Tally) {
    this.at = at;
    this.tally = tally;
  }

  /** A new point begins: the values of the one before are forgotten. */
  begin(attributes: Readonly<Record<string, string>>): void {
    this.index++;
    this.line = this.at.line;
    const { lat, lon } = attributes;
    this.latitude = lat === undefined ? Number.NaN : readDecimal(lat);
    this.longitude = lon === undefined ? Number.NaN : readDecimal(lon);
    this.altitude = this.time = this.hdop = this.speed = this.course = this.satellites = Number.NaN;
    this.fixed = true;
    if (Number.isNaN(this.latitude) || Number.isNaN(this.longitude)) {
      const facts = { lat: lat?.slice(0, 40) ?? null, lon: lon?.slice(0, 40) ?? null };
      this.tally.add("unreadable-position", "warning", this.at.place(this.index), { dropped: 1, facts });
    }
  }

  /** The text of an element is complete. Of elements written twice the first readable one counts. */
  take(element: PointElement, text: string): void {
    if (element === "fix") {
      if (text.trim() === "none") this.fixed = false;
    } else if (element !== "time") this.takeNumber(element, text);
    else if (Number.isNaN(this.time)) this.takeTime(text);
  }

  /** The point is over: a row, unless its place is unreadable (counted when it began) or it had no fix. */
  pushTo(columns: GrowingColumns): void {
    if (Number.isNaN(this.latitude) || Number.isNaN(this.longitude)) return;
    if (!this.fixed) {
      const place = { line: this.line, column: 0, point: this.index };
      this.tally.add("point-without-fix", "warning", place, { dropped: 1 });
      return;
    }
    columns.push(this.time, this.latitude, this.longitude, this.altitude, this.line);
    put(columns, "hdop", this.hdop);
    put(columns, "groundSpeed", this.speed);
    put(columns, "trackAngle", this.course);
    put(columns, "satellites", this.satellites);
  }

  private takeTime(text: string): void {
    const time = this.times.read(text);
    if (!Number.isNaN(time)) {
      this.time = time;
      if (!this.times.zoned) this.tally.add("time-without-zone", "note", this.at.place(this.index));
    } else if (text.trim() !== "") {
      const facts = { time: text.trim().slice(0, 40) };
      this.tally.add("unreadable-time", "warning", this.at.place(this.index), { facts });
    }
  }

  private takeNumber(element: Exclude<PointElement, "time" | "fix">, text: string): void {
    const number = readDecimal(text);
    if (Number.isNaN(number)) {
      if (text.trim() === "") return;
      const facts = { element, value: text.trim().slice(0, 40) };
      this.tally.add("unreadable-value", "warning", this.at.place(this.index), { facts, detail: element });
    } else if (element === "ele") {
      if (Number.isNaN(this.altitude)) this.altitude = feetFromMetres(number);
    } else if (element === "hdop") {
      if (Number.isNaN(this.hdop)) this.hdop = number;
    } else if (element === "sat") {
      if (Number.isNaN(this.satellites)) this.satellites = number;
    } else if (element === "speed") {
      if (Number.isNaN(this.speed) && number >= 0) this.speed = knotsFromMetresPerSecond(number);
    } else if (Number.isNaN(this.course) && number >= 0) this.course = direction(number);
  }
}

function put(columns: GrowingColumns, column: OptionalColumn, value: number): void {
  if (!Number.isNaN(value)) columns.set(column, value);
}
