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
  const sorted = { ...track } as Record<string, unknown>;
  for (const [name, column] of Object.entries(track)) {
    if (column instanceof Float64Array) sorted[name] = Float64Array.from(order, (row) => column[row]!);
    else if (column instanceof Int32Array && name !== "segment") {
      sorted[name] = Int32Array.from(order, (row) => column[row]!);
    }
  }
  return sorted as unknown as Track;
}
