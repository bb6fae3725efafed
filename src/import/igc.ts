/** FAI IGC: fixes of a flight recorder, their date, heights, added fields and the declared task. */

import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { DAY_MS } from "../quantity/time.ts";
import { GrowingColumns } from "./columns.ts";
import { loadGeoid } from "./geoid.ts";
import {
  degreesAt,
  digits,
  EXTENSION_COLUMNS,
  type Extension,
  extensionsOf,
  metresAt,
  signedDigits,
  WHOLE_DIGITS,
} from "./igc-fields.ts";
import type { Waypoint } from "./imported.ts";
import { daysFromCivil, daysInMonth } from "./iso-time.ts";
import type { Found, LineLogReader } from "./log-reader.ts";
import { plausibleSpeeds } from "./plausible.ts";
import type { Tally } from "./tally.ts";
import { inTimeOrder } from "./time-order.ts";

/** The format is of 1995: years 80 to 99 are of the last century (common practice, no source). */
const CENTURY_FROM = 80;
/** Records of the format (A2.2); a line that begins otherwise is no record. */
const RECORDS = "ABCDEFGHIJKLMNO";

/**
 * B records, 35 characters and what the I record adds (TAS, IAS, GSP, TRT, HDT, HDM, OAT, FXA, SIU; TDS, LAD and LOD make time and
 * place finer). The day comes from the date header in either spelling and moves by the nearest day, so midnight is
 * crossed forwards, and back by a line out of order. Lines out of order are put in order (`lines-out-of-order`).
 * `altitude` is the GNSS height brought from the ellipsoid to sea level with EGM96 (`height-above-ellipsoid`),
 * unless the header says that it is above the geoid; unknown for a 2D fix (V, `fix-without-height`); where the log
 * has no GNSS height at all it is the pressure altitude (`height-is-pressure`, `heightsBy` of the track). `pressureAltitude` is on 1013.25 hPa.
 * Without a date header times count from 1970-01-01 (`no-date`). The task (C records) becomes a route.
 * Source: FAI, Technical Specification for GNSS Flight Recorders, 2nd ed. with AL8, 2023, App. A4.
 */
export class IgcReader implements LineLogReader {
  private readonly columns = new GrowingColumns();
  private readonly tally: Tally;
  private seen = 0;
  private day = 0;
  private dated = false;
  /** Rows before the date header came. */
  private undated = 0;
  private last = Number.NaN;
  private extensions: readonly Extension[] = [];
  private aboveGeoid = false;
  private someGnss = false;
  private readonly task: Waypoint[] = [];

  constructor(tally: Tally) {
    this.tally = tally;
  }

  readLine(text: string, line: number): void {
    switch (text[0]) {
      case "B":
        this.fix(text, line);
        break;
      case "H":
        this.header(text, line);
        break;
      case "I": {
        const found = extensionsOf(text);
        if (found === null)
          this.tally.add("unreadable-record", "warning", at(line), { facts: { record: "I" }, detail: "I" });
        else this.extensions = found;
        break;
      }
      case "C":
        this.taskPoint(text);
        break;
      default:
        // biome-ignore lint/suspicious/noControlCharactersInRegex: what fills a file's end is no line
        if (!/^[\s\u0000\u001a]*$/.test(text) && !RECORDS.includes(text[0]!)) {
          this.tally.add("unknown-line", "note", at(line), { facts: { begins: text.slice(0, 20) } });
        }
    }
  }

  async finish(file: string): Promise<Found> {
    const { tally, columns } = this;
    const raw = columns.finish(file, "igc");
    const altitude = raw.altitude;
    let byPressure = false;
    if (!this.dated && raw.length > 0) tally.add("no-date", "warning", at(0));
    if (this.dated) for (let i = 0; i < this.undated; i++) raw.time[i]! += this.day * DAY_MS;
    if (!this.someGnss) {
      if (raw.pressureAltitude?.some((h) => h !== 0)) {
        altitude.set(raw.pressureAltitude);
        byPressure = true;
        tally.add("height-is-pressure", "warning", at(0), { facts: { hPa: 1013.25 } });
      } else altitude.fill(Number.NaN);
    } else if (!this.aboveGeoid) {
      const geoid = await loadGeoid();
      for (let i = 0; i < raw.length; i++) {
        if (!Number.isNaN(altitude[i]!))
          altitude[i]! -= geoid(raw.latitude[i]!, raw.longitude[i]!) / METRES_PER_FOOT;
      }
      const facts = { geoid: "EGM96", geoidM: Math.round(geoid(raw.latitude[0]!, raw.longitude[0]!)) };
      tally.add("height-above-ellipsoid", "note", at(0), { facts });
    }
    const told = byPressure ? { ...raw, heightsBy: "pressure" as const } : raw;
    const track = plausibleSpeeds(inTimeOrder(told, tally), tally);
    const routes = this.task.length > 0 ? [{ name: "task", points: this.task }] : [];
    return { track, waypoints: [], routes, pointsSeen: this.seen };
  }

  private header(text: string, line: number): void {
    const date = /^H[A-Z]?DTE(?:DATE)?:?\s*(.*)/.exec(text)?.[1];
    if (date !== undefined) {
      const [day, month, years] = [digits(date, 0, 2), digits(date, 2, 4), digits(date, 4, 6)];
      // Some programs write the whole year, against the rule.
      const whole = digits(date, 4, 8);
      const year = Number.isNaN(whole) ? years + (years >= CENTURY_FROM ? 1900 : 2000) : whole;
      if (month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month)) {
        if (!this.dated) this.undated = this.columns.length;
        this.day = daysFromCivil(year, month, day);
        this.dated = true;
        this.last = Number.NaN;
      } else
        this.tally.add("unreadable-date", "warning", at(line), {
          facts: { date: date.slice(0, 20), form: "171026" },
        });
    } else if (/^H[A-Z]?ALG.*GEO/.test(text)) this.aboveGeoid = true;
  }

  private fix(text: string, line: number): void {
    const point = this.seen++;
    let [seconds, finer] = [0, 0];
    let [latitudeMore, latitudeDigits, longitudeMore, longitudeDigits] = [0, 0, 0, 0];
    for (const { code, start, end } of this.extensions) {
      const value = digits(text, start, end);
      if (Number.isNaN(value)) continue;
      if (code === "TDS") finer = value / 10 ** (end - start);
      else if (code === "LAD") [latitudeMore, latitudeDigits] = [value, end - start];
      else if (code === "LOD") [longitudeMore, longitudeDigits] = [value, end - start];
    }
    const [hour, minute, second] = [digits(text, 1, 3), digits(text, 3, 5), digits(text, 5, 7)];
    seconds =
      hour < 24 && minute < 60 && second <= 60 ? hour * 3600 + minute * 60 + second + finer : Number.NaN;
    const latitude = degreesAt(text, 7, 2, latitudeMore, latitudeDigits);
    const longitude = degreesAt(text, 15, 3, longitudeMore, longitudeDigits);
    const validity = text[24];
    if (Number.isNaN(seconds + latitude + longitude) || (validity !== "A" && validity !== "V")) {
      const facts = { begins: text.slice(0, 35) };
      this.tally.add("unreadable-position", "warning", { line, column: 1, point }, { dropped: 1, facts });
      return;
    }
    const pressure = metresAt(text, 25);
    const gnss = validity === "A" ? metresAt(text, 30) : Number.NaN;
    if (validity === "V") this.tally.add("fix-without-height", "note", { line, column: 25, point });
    else if (gnss !== 0 && !Number.isNaN(gnss)) this.someGnss = true;
    this.columns.push(this.timeOf(seconds), latitude, longitude, gnss / METRES_PER_FOOT, line);
    if (!Number.isNaN(pressure)) this.columns.set("pressureAltitude", pressure / METRES_PER_FOOT);
    for (const { code, start, end } of this.extensions) {
      const target = EXTENSION_COLUMNS[code];
      const value = target === undefined ? Number.NaN : signedDigits(text, start, end);
      if (target !== undefined && !Number.isNaN(value)) {
        const [column, convert] = target;
        this.columns.set(column, convert(value / 10 ** Math.max(0, end - start - WHOLE_DIGITS)));
      }
    }
  }

  /** On the day that brings the time nearest to that of the fix before. */
  private timeOf(seconds: number): number {
    const time = this.day * DAY_MS + seconds * 1000;
    const days = Number.isNaN(this.last) ? 0 : Math.round((this.last - time) / DAY_MS);
    this.last = time + days * DAY_MS;
    return this.last;
  }

  /** `C DDMMmmmN DDDMMmmmE name`; the first C record declares and has no place, 0 0 is "not set". */
  private taskPoint(text: string): void {
    const latitude = degreesAt(text, 1, 2, 0, 0);
    const longitude = degreesAt(text, 9, 3, 0, 0);
    if (Number.isNaN(latitude + longitude) || (latitude === 0 && longitude === 0)) return;
    this.task.push({ ident: text.slice(18).trim(), latitude, longitude, altitude: null });
  }
}

const at = (line: number) => ({ line, column: 0, point: -1 });
