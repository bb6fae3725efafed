/** Where the entries of a ZIP lie: by its directory, or, where that is cut off or damaged, by the headers before each. */
import { strFromU8 } from "fflate";

export interface ZipEntry {
  /** 0 as it is, 8 deflated (APPNOTE 4.4.5). */
  readonly method: number;
  /** Where its packed bytes begin. */
  readonly start: number;
  readonly packedSize: number;
  readonly size: number;
  /** CRC-32 of what was packed. */
  readonly checkSum: number;
}

export interface ZipEntries {
  readonly byName: ReadonlyMap<string, ZipEntry>;
  /** The directory at the end is there, from its first line to its last. */
  readonly whole: boolean;
}

/** Signatures and lengths without names: APPNOTE 4.3.7, 4.3.9, 4.3.12, 4.3.16. */
const HEADER = { signature: 0x04034b50, length: 30 };
const DESCRIPTOR = { signature: 0x08074b50, length: 16 };
const LINE = { signature: 0x02014b50, length: 46 };
const END = { signature: 0x06054b50, length: 22 };
const MOST_COMMENT = 0xffff;

/** General purpose flags (APPNOTE 4.4.4): sizes and check sum follow the bytes; the name is UTF-8. */
const FOLLOWED = 1 << 3;
const UTF8 = 1 << 11;

type Add = (name: string, entry: ZipEntry) => void;

const nameAt = (archive: Uint8Array, at: number, length: number, flags: number): string =>
  strFromU8(archive.subarray(at, at + length), !(flags & UTF8));

/** The end of the directory, told from that of a ZIP within this one by where it says that the directory begins. */
function endOfDirectory(view: DataView): number | null {
  const last = view.byteLength - END.length;
  for (let at = last; at >= Math.max(0, last - MOST_COMMENT); at--) {
    if (view.getUint32(at, true) !== END.signature) continue;
    if (view.getUint32(at + 12, true) + view.getUint32(at + 16, true) === at) return at;
  }
  return null;
}

/** Where the bytes after the header at a place begin; what lies past the end of the file is found out when it is read. */
const startOf = (view: DataView, header: number): number =>
  header + HEADER.length <= view.byteLength
    ? header + HEADER.length + view.getUint16(header + 26, true) + view.getUint16(header + 28, true)
    : view.byteLength;

/** False where a line of the directory is none. */
function readDirectory(archive: Uint8Array, view: DataView, add: Add): boolean {
  const end = endOfDirectory(view);
  if (end === null) return false;
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + LINE.length > end || view.getUint32(at, true) !== LINE.signature) return false;
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const lengths = [28, 30, 32].map((field) => view.getUint16(at + field, true));
    add(nameAt(archive, at + LINE.length, lengths[0]!, flags), {
      method,
      start: startOf(view, view.getUint32(at + 42, true)),
      packedSize: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      checkSum: view.getUint32(at + 16, true),
    });
    at += LINE.length + lengths.reduce((sum, length) => sum + length, 0);
  }
  return at === end;
}

/** The descriptor after bytes of unknown length: the one that tells the very length at which it stands. */
function descriptorAfter(view: DataView, start: number): number | null {
  for (let at = start; at + DESCRIPTOR.length <= view.byteLength; at++)
    if (view.getUint32(at, true) === DESCRIPTOR.signature && view.getUint32(at + 8, true) === at - start)
      return at;
  return null;
}

/** Header by header from the beginning; what is cut off in its middle is none. */
function readHeaders(archive: Uint8Array, view: DataView, add: Add): void {
  for (let at = 0; at + HEADER.length <= archive.length; ) {
    if (view.getUint32(at, true) !== HEADER.signature) {
      at++;
      continue;
    }
    const [flags, method, start] = [
      view.getUint16(at + 6, true),
      view.getUint16(at + 8, true),
      startOf(view, at),
    ];
    const after = flags & FOLLOWED ? descriptorAfter(view, start) : null;
    // check sum, packed size and size stand in a row, in the header from 14 on, in the descriptor from 4 on
    const sums = after === null ? at + 14 : after + 4;
    const packedSize = view.getUint32(sums + 4, true);
    const end = after === null ? start + packedSize : after + DESCRIPTOR.length;
    if ((flags & FOLLOWED && after === null) || end > archive.length) {
      at++;
      continue;
    }
    const [checkSum, size] = [view.getUint32(sums, true), view.getUint32(sums + 8, true)];
    const name = nameAt(archive, at + HEADER.length, view.getUint16(at + 26, true), flags);
    add(name, { method, start, packedSize, size, checkSum });
    at = end;
  }
}

/** Every entry that can be found, each once. */
export function zipEntries(archive: Uint8Array): ZipEntries {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const byName = new Map<string, ZipEntry>();
  const add: Add = (name, entry) => {
    if (!byName.has(name)) byName.set(name, entry);
  };
  const whole = archive.length >= END.length && readDirectory(archive, view, add);
  if (!whole) readHeaders(archive, view, add);
  return { byName, whole };
}
