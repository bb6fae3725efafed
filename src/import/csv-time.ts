/** Times as tables write them: one text, date and time apart, numbers of the epoch, seconds from some start. */
import { DAY_MS } from "../quantity/time.ts";
import { isoDate } from "./csv-date.ts";
import { IsoTimeReader } from "./iso-time.ts";

/** Numbers of the epoch from 1973 on, by their size: seconds, then milliseconds, microseconds, nanoseconds. */
const EPOCH_SECONDS = 1e8;
const EPOCH_MILLIS = 1e11;
/** "20261017094410" */
const ALL_DIGITS = /^((?:19|20)\d{6})(\d{6})$/;

/** Date and clock in one text: "2026-10-17 09:44", "17.10.2026, 9:44:10 PM", "Oct 17, 2026 09:44:10". */
const BOTH = /^(.*[^\s,T])[\sT,]+(\d{1,2}:.*|\d{6}(?:\.\d+)?Z?)$/i;
/** "Sat Oct 17 09:44:10 UTC 2026", as some programs print. */
const YEAR_LAST = /^[a-z]{3},? ([a-z]{3} +\d{1,2}) (\d{1,2}:\d{2}:\d{2})(?: (?:UTC|GMT))? (\d{4})$/i;

/** hh:mm:ss with its fraction and zone of "9:44", "9:44:10 pm", "094410.5", "09:44:10 UTC". */
function isoClock(text: string): string {
  const clock = text.replace(/\s*(?:UTC|GMT)$/i, "Z");
  const compact = /^(\d{2})(\d{2})(\d{2}(?:[.,]\d+)?Z?)$/i.exec(clock);
  if (compact !== null) return `${compact[1]}:${compact[2]}:${compact[3]}`;
  const parts = /^(\d{1,2}):(\d{2})(:\d{2}(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?(.*)$/i.exec(clock);
  if (parts === null) return clock;
  const [, hour, minute, second = ":00", half = "", rest] = parts;
  const twelve = half === "" ? Number(hour) : (Number(hour) % 12) + (/^p/i.test(half) ? 12 : 0);
  const whole = half !== "" && (Number(hour) > 12 || hour === "0") ? Number.NaN : twelve;
  return `${String(whole).padStart(2, "0")}:${minute}${second}${rest}`;
}

function ofEpoch(number: number): number {
  let millis = number < EPOCH_MILLIS ? number * 1000 : number;
  while (millis >= EPOCH_MILLIS * 1000) millis /= 1000;
  return millis;
}

export class CsvTimeReader {
  /** Whether the last time named its zone or was of the epoch. */
  zoned = true;
  /** Whether the last time had a date that could be read. */
  dated = true;
  /** The last date as written, where day and month could be either way round. */
  eitherWay: string | null = null;
  private readonly iso = new IsoTimeReader();
  private last = Number.NaN;

  /**
   * UTC milliseconds or NaN. `toMillis` where the heading gives a unit: small numbers then count from some start, on
   * 1970-01-01. Without a date that can be read: from 1970-01-01, on the day nearest to the time before.
   */
  read(time: string, date: string, offset: string, toMillis: ((value: number) => number) | null): number {
    this.dated = this.zoned = true;
    this.eitherWay = null;
    const number = date === "" && /^\d+(?:\.\d+)?$/.test(time) ? Number(time) : Number.NaN;
    const digits = ALL_DIGITS.exec(time);
    if (number >= EPOCH_SECONDS && digits === null) return ofEpoch(number);
    if (toMillis !== null && !Number.isNaN(number)) {
      this.dated = false;
      return toMillis(number);
    }
    let [day, clock] = [date, time];
    if (day === "") {
      const printed = YEAR_LAST.exec(time);
      const parts =
        digits?.slice(1) ??
        (printed ? [`${printed[1]} ${printed[3]}`, printed[2]!] : BOTH.exec(time)?.slice(1));
      if (parts) [day, clock] = parts as [string, string];
    }
    const iso = day === "" ? null : isoDate(day, /[ap]\.?m/i.test(clock));
    if (iso === null) return this.ofDay(isoClock(clock));
    if (iso.eitherWay) this.eitherWay = day;
    const value = this.iso.read(`${iso.text}T${isoClock(clock)}${offset}`);
    this.zoned = this.iso.zoned;
    return value;
  }

  private ofDay(clock: string): number {
    const value = this.iso.read(`1970-01-01T${clock}`);
    this.zoned = this.iso.zoned;
    this.dated = false;
    if (Number.isNaN(value)) return value;
    const days = Number.isNaN(this.last) ? 0 : Math.round((this.last - value) / DAY_MS);
    this.last = value + days * DAY_MS;
    return this.last;
  }
}
