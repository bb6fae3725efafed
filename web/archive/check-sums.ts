/** The bytes of an entry of a ZIP, believed only where their length and check sum are those that were written down with them. */
import { inflateSync } from "fflate";
import type { ZipEntry } from "./zip-entries.ts";

/** Reversed bits of the generator polynomial of CRC-32 (APPNOTE 4.4.7; ISO/IEC 3309). */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ POLYNOMIAL : sum >>> 1;
  return sum;
});

/** CRC-32 as in a ZIP (APPNOTE 4.4.7): begins with all bits set, ends inverted. */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = TABLE[(sum ^ byte) & 0xff]! ^ (sum >>> 8);
  return ~sum >>> 0;
}

const [STORED, DEFLATED] = [0, 8];
/** Nothing deflates to less than 1/1032 of its length (zlib's technical notes): a longer claim is damage. */
const MOST_TIMES = 1032;

function unpacked({ method, size }: ZipEntry, packed: Uint8Array): Uint8Array | null {
  if (method === STORED) return packed;
  if (method !== DEFLATED || size > packed.length * MOST_TIMES) return null;
  try {
    return inflateSync(packed, { out: new Uint8Array(size) });
  } catch {
    return null;
  }
}

/** The entry as it was packed, letter by letter; null where it is damaged or cut off. */
export function checkedBytes(archive: Uint8Array, entry: ZipEntry): Uint8Array | null {
  const { start, packedSize, size, checkSum } = entry;
  if (start + packedSize > archive.length) return null;
  const bytes = unpacked(entry, archive.subarray(start, start + packedSize));
  return bytes?.length === size && crc32(bytes) === checkSum ? bytes : null;
}
