/** The log inside a KMZ, ZIP or gzip file, unpacked as a stream and bounded against bombs. */
import { Gunzip, Unzip, type UnzipFile, UnzipInflate } from "fflate";
import type { Tally } from "./tally.ts";

/** Bytes out of one archive: three times the million-point GPX of 140 MB. What is beyond is not unpacked. */
export const MAX_UNPACKED = 400_000_000;
/** Packed bytes given at once: deflate yields at most 1032 times as many (zlib, "Technical Details"), 2 MB; and of a
 * piece with damage in it nothing comes out, so pieces are small. */
const PACKED_PIECE = 1 << 11;
/** Entries looked at in one archive. */
const MAX_ENTRIES = 10_000;
const LOG_ENDINGS = /\.(?:kml|gpx|igc|csv|xml|txt)$/i;
/** Twins that one system puts beside each file for its own notes. */
const NOTES = /(?:^|\/)(?:__MACOSX\/|\._)/;

const nowhere = { line: 0, column: 0, point: -1 };

/** What an archive held, told when it is through. */
export interface Unpacked {
  readonly bytes: AsyncIterable<Uint8Array>;
  /** The name of the entry in use, null until one is found. */
  entry(): string | null;
  /** How many further entries may be logs, as far as the archive was looked through. */
  others(): number;
  /** Bytes that came out so far. */
  length(): number;
}

/**
 * The first entry that may be a log, by its ending (a KMZ's main file is its first .kml), after `skip` such; the others
 * are counted. Damage ends the stream and is said (`broken-archive`), as is too much (`archive-too-big`):
 * what came before is kept. No entry is ever written anywhere, its name is only text.
 */
export function unpack(
  kind: "zip" | "gzip",
  packed: AsyncIterable<Uint8Array>,
  tally: Tally,
  skip = 0,
): Unpacked {
  let out: Uint8Array[] = [];
  let entry: string | null = null;
  let done = false;
  let entries = 0;
  let others = 0;
  let members = 0;
  let total = 0;
  let push: (bytes: Uint8Array, last: boolean) => void;
  if (kind === "gzip") {
    const gunzip = new Gunzip((bytes) => out.push(bytes));
    gunzip.onmember = () => members++;
    push = (bytes, last) => gunzip.push(bytes, last);
    entry = "";
  } else {
    const unzip = new Unzip((file: UnzipFile) => {
      if (++entries > MAX_ENTRIES) throw new Error("too many entries");
      if (!LOG_ENDINGS.test(file.name) || NOTES.test(file.name)) return;
      if (entry !== null || others < skip) {
        others++;
        return;
      }
      entry = file.name;
      file.ondata = (error, bytes, final) => {
        if (error) throw error;
        out.push(bytes);
        if (final) done = true;
      };
      file.start();
    });
    unzip.register(UnzipInflate);
    push = (bytes, last) => unzip.push(bytes, last);
  }

  async function* bytes(): AsyncGenerator<Uint8Array> {
    let broken = false;
    let tail = 0; // the last four bytes: of gzip, the unpacked length (RFC 1952, 2.3.1, ISIZE)
    const give = (piece: Uint8Array, last: boolean): Uint8Array[] => {
      try {
        push(piece, last);
      } catch (error) {
        broken = true;
        const reason = error instanceof Error ? error.message.slice(0, 60) : "";
        tally.add("broken-archive", "warning", nowhere, { facts: { reason } });
      }
      const ready = out;
      out = [];
      return ready;
    };
    for await (const piece of packed) {
      for (const byte of piece.subarray(-4)) tail = ((tail >>> 8) | (byte << 24)) >>> 0;
      for (let at = 0; at < piece.length && !broken; at += PACKED_PIECE) {
        for (const part of give(piece.slice(at, at + PACKED_PIECE), false)) {
          total += part.length;
          if (total > MAX_UNPACKED) {
            tally.add("archive-too-big", "error", nowhere, { facts: { limit: MAX_UNPACKED } });
            return;
          }
          yield part;
        }
      }
      if (broken) break;
    }
    if (!broken) {
      for (const part of give(new Uint8Array(), true)) {
        total += part.length;
        yield part;
      }
    }
    const short = kind === "zip" ? entry !== null && !done : members <= 1 && total !== tail;
    if (!broken && short) {
      tally.add("broken-archive", "warning", nowhere, { facts: { reason: "not complete" } });
    }
  }
  return { bytes: bytes(), entry: () => entry, others: () => others, length: () => total };
}
