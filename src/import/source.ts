/** The bytes of a file in pieces of a sensible size, with a look ahead, progress and cancel. */
import { Cancelled } from "./cancelled.ts";
import type { ByteSource, ReadOptions } from "./imported.ts";

/** Node and browsers both have it; waiting lets messages in (a cancel, a progress bar). */
declare const setTimeout: (then: () => void, milliseconds: number) => unknown;

/** Piece given to a parser at once, bytes: about 10 ms of work, so that a page stays awake. */
const PIECE_BYTES = 1 << 18;
/** After so many bytes other work gets its turn. */
const REST_BYTES = 1 << 19;

/** Gathers at least `enough` bytes from the front of `source` (or all there are) and gives them and the whole back. */
export async function peek(
  source: ByteSource,
  enough: number,
): Promise<{ readonly head: Uint8Array; readonly whole: AsyncIterable<Uint8Array> }> {
  const pieces = Symbol.asyncIterator in source ? source[Symbol.asyncIterator]() : source[Symbol.iterator]();
  const seen: Uint8Array[] = [];
  let length = 0;
  let done = false;
  while (length < enough && !done) {
    const next = await pieces.next();
    if (next.done) done = true;
    else if (next.value.length > 0) {
      seen.push(next.value);
      length += next.value.length;
    }
  }
  const head = new Uint8Array(Math.min(length, enough));
  let at = 0;
  for (const piece of seen) {
    if (at === head.length) break;
    const part = piece.subarray(0, head.length - at);
    head.set(part, at);
    at += part.length;
  }
  async function* whole(): AsyncGenerator<Uint8Array> {
    try {
      for (let piece = seen.shift(); piece !== undefined; piece = seen.shift()) yield piece;
      while (!done) {
        const next = await pieces.next();
        if (next.done) done = true;
        else yield next.value;
      }
    } finally {
      if (!done) await pieces.return?.();
    }
  }
  return { head, whole: whole() };
}

/** Cuts long pieces, tells the progress, lets other work in and stops with `Cancelled` when asked to. */
export async function* paced(
  source: AsyncIterable<Uint8Array>,
  file: string,
  { onProgress, signal }: ReadOptions,
): AsyncGenerator<Uint8Array> {
  const watched = onProgress !== undefined || signal !== undefined;
  let read = 0;
  let rested = 0;
  for await (const piece of source) {
    for (let at = 0; at < piece.length; at += PIECE_BYTES) {
      if (signal?.aborted) throw new Cancelled(file);
      const part = piece.length <= PIECE_BYTES ? piece : piece.subarray(at, at + PIECE_BYTES);
      yield part;
      read += part.length;
      if (watched && read - rested >= REST_BYTES) {
        rested = read;
        onProgress?.(read);
        await new Promise<void>((go) => setTimeout(go, 0));
      }
    }
  }
  if (signal?.aborted) throw new Cancelled(file);
  onProgress?.(read);
}

/** A longer archive is not kept in memory; it is read once. */
const MOST_KEPT = 64_000_000;

/** A source that can be read again from its start, as far as it is short enough to be kept. */
export function rewindable(source: AsyncIterable<Uint8Array>): {
  fromStart: () => AsyncGenerator<Uint8Array>;
  canRewind: () => boolean;
} {
  const pieces = source[Symbol.asyncIterator]();
  const kept: Uint8Array[] = [];
  let [pulled, bytes] = [0, 0];
  async function* fromStart(): AsyncGenerator<Uint8Array> {
    for (let i = 0; ; i++) {
      if (i < pulled) {
        yield kept[i]!;
        continue;
      }
      const next = await pieces.next();
      if (next.done) return;
      pulled++;
      bytes += next.value.length;
      if (bytes <= MOST_KEPT) kept.push(next.value);
      else kept.length = 0;
      yield next.value;
    }
  }
  return { fromStart, canRewind: () => bytes <= MOST_KEPT };
}
