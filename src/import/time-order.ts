/** Puts the rows of a log in the order of their times, where its lines were shuffled. */
import type { Track } from "../track/track.ts";
import type { Tally } from "./tally.ts";

/** Stable: rows of one time keep their order. Says `lines-out-of-order` with the number of steps back in time. */
export function inTimeOrder(track: Track, tally: Tally): Track {
  const { time, length } = track;
  let falls = 0;
  for (let i = 1; i < length; i++) {
    if (!(time[i]! < time[i - 1]!)) continue;
    falls++;
    tally.add("lines-out-of-order", "warning", { line: track.line[i]!, column: 0, point: i });
  }
  if (falls === 0) return track;
  const order = Int32Array.from({ length }, (_, i) => i).sort((a, b) => time[a]! - time[b]! || a - b);
  return rowsInOrder(track, order);
}

/** The same rows in another order; segments stay where they were in the log. */
function rowsInOrder(track: Track, order: Int32Array): Track {
  const sorted = { ...track } as Record<string, unknown>;
  for (const [name, column] of Object.entries(track)) {
    if (column instanceof Float64Array) sorted[name] = Float64Array.from(order, (row) => column[row]!);
    else if (column instanceof Int32Array && name !== "segment") {
      sorted[name] = Int32Array.from(order, (row) => column[row]!);
    }
  }
  return sorted as unknown as Track;
}

/**
 * Segments in the order of their times, where a file has them otherwise (the newest track first, say) and they do not
 * overlap: `segments-out-of-order`. Inside a segment nothing is moved. Untimed rows keep a log as it is.
 */
export function segmentsInOrder(track: Track, tally: Tally): Track {
  const { time, segment, length } = track;
  const starts: number[] = [];
  let falls = false;
  for (let i = 0; i < length; i++) {
    if (Number.isNaN(time[i]!)) return track;
    if (i === 0 || segment[i] !== segment[i - 1]) starts.push(i);
    if (i > 0 && time[i]! < time[i - 1]!) {
      if (starts.at(-1) !== i) return track; // it falls inside a segment: a matter for cleaning
      falls = true;
    }
  }
  if (!falls) return track;
  const spans = starts.map((start, k) => ({ start, end: starts[k + 1] ?? length }));
  const sorted = [...spans].sort((a, b) => time[a.start]! - time[b.start]!);
  if (sorted.some((span, k) => k > 0 && time[span.start]! < time[sorted[k - 1]!.end - 1]!)) return track;
  const order = new Int32Array(length);
  let row = 0;
  sorted.forEach((span, k) => {
    if (spans[k] !== span)
      tally.add("segments-out-of-order", "note", {
        line: track.line[span.start]!,
        column: 0,
        point: span.start,
      });
    for (let i = span.start; i < span.end; i++) order[row++] = i;
  });
  const renumbered = new Int32Array(length);
  for (let i = 1; i < length; i++) {
    renumbered[i] = renumbered[i - 1]! + (segment[order[i]!] === segment[order[i - 1]!] ? 0 : 1);
  }
  return { ...rowsInOrder(track, order), segment: renumbered };
}
