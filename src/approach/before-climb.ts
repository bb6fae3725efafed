/** The rows of the final that were flown down: a climb away is no part of how a path was kept. */
import type { Span } from "../quantity/span.ts";
import { valueAt } from "./column.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { silenceAt } from "./silence.ts";

/** Where a climb began is told no better than by a step of the log, and that much before it is left out; two rows stay. */
export function beforeClimb(rows: ApproachRows, { final, missed }: Pick<Segments, "final" | "missed">): Span {
  if (!missed) return final;
  const { row } = missed.start;
  const silent = silenceAt(rows, missed.start) !== null;
  const before = row > 0 && rows.silentBefore(row) === null ? rows.timeMs[row]! - rows.timeMs[row - 1]! : 0;
  const step = silent ? before : Math.max(before, (rows.timeMs[row + 1] ?? 0) - rows.timeMs[row]!);
  const last = (silent ? rows.timeMs[row]! : valueAt(rows.timeMs, missed.start)) - step;
  let { end } = final;
  while (end > final.start + 2 && rows.timeMs[end - 1]! > last) end--;
  return { start: final.start, end };
}
