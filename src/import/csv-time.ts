/** Times as tables write them: one text, date and time apart, or seconds of the epoch. */
import { IsoTimeReader } from "./iso-time.ts";

const MS_PER_DAY = 86_400_000;
/** Numbers of the epoch: seconds from 1973 on (10^8) and milliseconds (10^11), both up to year 5138. */
const EPOCH_SECONDS = 1e8;
const EPOCH_MILLIS = 1e11;
const EPOCH_END = 1e14;

/** YYYY-MM-DD of "2026-10-17", "2026/10/17", "20261017", "17.10.2026"; of "17/10/2026" and "10/17/2026" where only one reading is a date. */
export function isoDate(text: string): string | null {
  const yearFirst = /^(\d{4})[-/.]?(\d{2})[-/.]?(\d{2})$/.exec(text);
  if (yearFirst !== null) return `${yearFirst[1]}-${yearFirst[2]}-${yearFirst[3]}`;
  const yearLast = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$/.exec(text);
  if (yearLast === null) return null;
  const [a, b] = [Number(yearLast[1]), Number(yearLast[3])];
  const dayFirst = yearLast[2] === "." || a > 12;
  if (!dayFirst && b <= 12) return null; // both readings are dates
  const two = (n: number) => String(n).padStart(2, "0");
  return `${yearLast[4]}-${dayFirst ? two(b) : two(a)}-${dayFirst ? two(a) : two(b)}`;
}

export class CsvTimeReader {
  /** Whether the last time named its zone or was of the epoch. */
  zoned = true;
  /** Whether the last time had a date. */
  dated = true;
  private readonly iso = new IsoTimeReader();
  private last = Number.NaN;

  /** UTC milliseconds or NaN. Without a date: from 1970-01-01, on the day nearest to the time before. */
  read(time: string, date: string, offset: string): number {
    this.dated = true;
    const epoch = date === "" && /^\d{9,14}(?:\.\d+)?$/.test(time) ? Number(time) : Number.NaN;
    this.zoned = true;
    if (epoch >= EPOCH_SECONDS && epoch < EPOCH_MILLIS) return epoch * 1000;
    if (epoch >= EPOCH_MILLIS && epoch < EPOCH_END) return epoch;
    let [day, clock] = [date, time];
    if (day === "") {
      const parts = /^(.*\d)[T ]+(\d{1,2}:.*)$/i.exec(time);
      if (parts !== null) [, day, clock] = parts as unknown as [string, string, string];
    }
    if (/^\d:/.test(clock!)) clock = `0${clock}`;
    if (day === "") return this.ofDay(clock!);
    const iso = isoDate(day!);
    if (iso === null) return Number.NaN;
    const value = this.iso.read(`${iso}T${clock!.replace(/\s*(?:UTC|GMT)$/i, "Z")}${offset}`);
    this.zoned = this.iso.zoned;
    return value;
  }

  private ofDay(clock: string): number {
    const value = this.iso.read(`1970-01-01T${clock.replace(/\s*(?:UTC|GMT)$/i, "Z")}`);
    this.zoned = this.iso.zoned;
    this.dated = false;
    if (Number.isNaN(value)) return value;
    const days = Number.isNaN(this.last) ? 0 : Math.round((this.last - value) / MS_PER_DAY);
    this.last = value + days * MS_PER_DAY;
    return this.last;
  }
}
