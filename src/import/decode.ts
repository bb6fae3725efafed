/** Bytes to text: finds the encoding from the byte order mark, the bytes or the XML declaration, and decodes piecewise. */

/** The one thing needed of the platform's text decoder (WHATWG Encoding Standard), in Node and in every browser. */
declare const TextDecoder: new (
  label?: string,
) => { decode(bytes?: Uint8Array, options?: { readonly stream?: boolean }): string };

export interface Decoder {
  /** The label in use, as in "utf-8". */
  readonly encoding: string;
  /** Set where the declared name is unknown to the platform; UTF-8 is used then. */
  readonly unknownName: string | null;
  decode(bytes: Uint8Array): string;
  end(): string;
}

/** The declaration stands in the first line; 256 bytes hold any honest one. */
const DECLARATION_BYTES = 256;

/** Whether of four pairs of bytes just the one at `side` is zero: Latin letters in UTF-16. */
const zerosAt = (head: Uint8Array, side: 0 | 1): boolean =>
  head.length >= 8 && head.subarray(0, 8).every((byte, i) => (byte === 0) === (i % 2 === side));

/** The encoding of a file that begins with `head`: mark first, then the shape of Latin letters in UTF-16, then the declaration. */
export function encodingOf(head: Uint8Array): string {
  const [a, b, c] = head;
  if (a === 0xef && b === 0xbb && c === 0xbf) return "utf-8";
  if (a === 0xff && b === 0xfe) return "utf-16le";
  if (a === 0xfe && b === 0xff) return "utf-16be";
  if (zerosAt(head, 1)) return "utf-16le";
  if (zerosAt(head, 0)) return "utf-16be";
  let text = "";
  for (let i = 0; i < Math.min(head.length, DECLARATION_BYTES); i++) text += String.fromCharCode(head[i]!);
  const declared = /^\s*<\?xml[^>]*?encoding\s*=\s*["']([A-Za-z0-9._:-]+)["']/.exec(text)?.[1]?.toLowerCase();
  // Eight-bit bytes that call themselves UTF-16 are not: the declaration itself could not have been read.
  return declared === undefined || declared.startsWith("utf-16") || declared.startsWith("ucs-2")
    ? "utf-8"
    : declared;
}

/** A decoder for a file that begins with `head`. Bytes that fit no character become U+FFFD; a mark is swallowed. */
export function decoderFor(head: Uint8Array): Decoder {
  let encoding = encodingOf(head);
  let unknownName: string | null = null;
  let decoder: InstanceType<typeof TextDecoder>;
  try {
    decoder = new TextDecoder(encoding);
  } catch {
    unknownName = encoding;
    encoding = "utf-8";
    decoder = new TextDecoder(encoding);
  }
  return {
    encoding,
    unknownName,
    decode: (bytes) => decoder.decode(bytes, { stream: true }),
    end: () => decoder.decode(),
  };
}
