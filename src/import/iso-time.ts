/** Reads ISO 8601 date-times by character, without a pattern or a Date per point. */
import { DAY_MS } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";

/** Days from 1970-01-01. Method: H. Hinnant, "chrono-Compatible Low-Level Date Algorithms", days_from_civil. */
export function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** `count` digits from `at`, or NaN. */
function digitsAt(text: string, at: number, count: number): number {
  let value = 0;
  for (let i = at; i < at + count; i++) {
    const d = text.charCodeAt(i) - 48;
    if (!(d >= 0 && d <= 9)) return Number.NaN;
    value = value * 10 + d;
  }
  return value;
}

const isSpace = (c: number): boolean => c === 32 || (c >= 9 && c <= 13);

/** What was read: a class with fields that change, so that a million points make no million objects. */
export class IsoTimeReader {
  /** Whether the last readable time named its zone (Z or an offset). */
  zoned = true;
  private lastDate = "";
  private lastDay = 0;

  /**
   * Milliseconds of UTC that `text` stands for, or NaN.
   * Read: `YYYY-MM-DD`, then `T`, `t` or a space, `hh:mm:ss`, a fraction after a point or comma (kept beyond the
   * millisecond), `Z`, `z`, `+hh:mm`, `+hhmm`, `+hh` or nothing (then `zoned` is false and UTC is assumed).
   * 24:00:00 is the next midnight and second 60 the start of the next minute.
   * Source: W3C, XML Schema Part 2: Datatypes, 2nd ed. 2004, 3.2.7 (dateTime); ISO 8601-1:2019, 5.4.
   */
  read(text: string): UtcMillis {
    let at = 0;
    let end = text.length;
    while (at < end && isSpace(text.charCodeAt(at))) at++;
    while (end > at && isSpace(text.charCodeAt(end - 1))) end--;
    if (end - at < 19) return Number.NaN;
    const day = this.day(text, at);
    const between = text.charCodeAt(at + 10) | 32; // T, t or a space
    if (between !== 116 && between !== 32) return Number.NaN;
    const hour = digitsAt(text, at + 11, 2);
    const minute = digitsAt(text, at + 14, 2);
    const second = digitsAt(text, at + 17, 2);
    if (text.charCodeAt(at + 13) !== 58 || text.charCodeAt(at + 16) !== 58) return Number.NaN;
    if (!(hour <= 24 && minute <= 59 && second <= 60)) return Number.NaN;
    at += 19;
    let fraction = 0;
    const mark = text.charCodeAt(at);
    if (mark === 46 || mark === 44) {
      let scale = 100;
      const first = ++at;
      for (; at < end; at++, scale /= 10) {
        const d = text.charCodeAt(at) - 48;
        if (!(d >= 0 && d <= 9)) break;
        if (at - first < 9) fraction += d * scale;
      }
      if (at === first) return Number.NaN;
      fraction = Math.round(fraction * 1e6) / 1e6;
    }
    if (hour === 24 && (minute !== 0 || second !== 0 || fraction !== 0)) return Number.NaN;
    const offset = this.offset(text, at, end);
    return day * DAY_MS + (hour * 60 + minute - offset) * 60_000 + second * 1000 + fraction;
  }

  /** The same date comes point after point: it is worked out once. */
  private day(text: string, at: number): number {
    if (this.lastDate !== "" && text.startsWith(this.lastDate, at)) return this.lastDay;
    if (text.charCodeAt(at + 4) !== 45 || text.charCodeAt(at + 7) !== 45) return Number.NaN;
    const year = digitsAt(text, at, 4);
    const month = digitsAt(text, at + 5, 2);
    const day = digitsAt(text, at + 8, 2);
    if (!(month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month))) return Number.NaN;
    if (Number.isNaN(year)) return Number.NaN;
    this.lastDate = text.slice(at, at + 10);
    this.lastDay = daysFromCivil(year, month, day);
    return this.lastDay;
  }

  /** Minutes east of UTC; NaN where what follows the seconds is no zone. */
  private offset(text: string, at: number, end: number): number {
    this.zoned = at < end;
    if (at === end) return 0;
    const c = text.charCodeAt(at);
    if ((c | 32) === 122) return at + 1 === end ? 0 : Number.NaN;
    if (c !== 43 && c !== 45) return Number.NaN;
    const length = end - at;
    const hours = digitsAt(text, at + 1, 2);
    let minutes = 0;
    if (length === 6 && text.charCodeAt(at + 3) === 58) minutes = digitsAt(text, at + 4, 2);
    else if (length === 5) minutes = digitsAt(text, at + 3, 2);
    else if (length !== 3) return Number.NaN;
    if (!(hours <= 14 && minutes <= 59)) return Number.NaN;
    return (c === 45 ? -1 : 1) * (hours * 60 + minutes);
  }
}
