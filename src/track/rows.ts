/** Keeps some rows of a track, all columns alike. */
import { type Span, spanLength } from "../quantity/span.ts";
import type { Track } from "./track.ts";

/** A new track of the rows where `keep` is 1, in their order. Values are copied, never changed. */
export function keepRows(track: Track, keep: Uint8Array): Track {
  const rows = keptRows(keep);
  const { length } = rows;
  if (length === track.length) return track;
  const cut = { ...track, length } as Record<string, unknown>;
  for (const [name, column] of Object.entries(track)) {
    if (column instanceof Float64Array) cut[name] = Float64Array.from(rows, (row) => column[row]!);
    else if (column instanceof Int32Array) cut[name] = Int32Array.from(rows, (row) => column[row]!);
  }
  return cut as unknown as Track;
}

/** The track with one column replaced by another of the same length. */
export const withColumn = <K extends "time" | "altitude" | "segment">(
  track: Track,
  name: K,
  column: Track[K],
): Track => ({
  ...track,
  [name]: column,
});

/** The rows where `keep` is 1, in order. */
export function keptRows(keep: Uint8Array): Int32Array {
  let length = 0;
  for (const k of keep) length += k;
  const rows = new Int32Array(length);
  for (let i = 0, k = 0; i < keep.length; i++) if (keep[i] === 1) rows[k++] = i;
  return rows;
}

/** The rows of a span as a track of its own. */
export function cutTrack(track: Track, span: Span): Track {
  const cut = { ...track, length: spanLength(span) } as Record<string, unknown>;
  for (const [name, column] of Object.entries(track)) {
    if (column instanceof Float64Array || column instanceof Int32Array)
      cut[name] = column.slice(span.start, span.end);
  }
  return cut as unknown as Track;
}
