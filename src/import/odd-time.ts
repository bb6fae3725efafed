/** Times of XML files: as the standard writes them, or in the spellings of programs that do not keep to it. */
import { CsvTimeReader } from "./csv-time.ts";
import { IsoTimeReader } from "./iso-time.ts";

export class OddTimeReader {
  /** Whether the last readable time named its zone. */
  zoned = true;
  private readonly iso = new IsoTimeReader();
  private readonly odd = new CsvTimeReader();

  /** UTC milliseconds; NaN where the text is no time, has no date, or has one that could be read two ways. */
  read(text: string): number {
    const time = this.iso.read(text);
    this.zoned = this.iso.zoned;
    if (!Number.isNaN(time)) return time;
    const trimmed = text.trim();
    if (trimmed.length < 8) return Number.NaN;
    const odd = this.odd.read(trimmed, "", "", null);
    this.zoned = this.odd.zoned;
    return this.odd.dated && this.odd.eitherWay === null ? odd : Number.NaN;
  }
}
