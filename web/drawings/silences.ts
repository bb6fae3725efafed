/** Where a drawn line crosses a silence of the log: what was seen is cut there, and the way across stands apart. */
import { silenceLimit, stepsOf } from "./contract.ts";

const known = new WeakMap<Float64Array, ReadonlySet<number>>();

/** Rows at which a silence of the log ends; none where it has no times. */
export function rowsAfterSilence(timeMs: Float64Array): ReadonlySet<number> {
  const before = known.get(timeMs);
  if (before) return before;
  const rows = new Set<number>();
  const seconds = timeMs.map((ms) => ms / 1000);
  const limit = silenceLimit(stepsOf(seconds));
  for (let i = 1; i < seconds.length; i++) if (seconds[i] - seconds[i - 1] > limit) rows.add(i);
  known.set(timeMs, rows);
  return rows;
}

/** Rows from, and to (the first that is no more drawn). */
interface Rows {
  readonly from: number;
  readonly to: number;
}

/** Rows cut at silences: what was seen, and each step across a silence as two rows that were not. */
export function cutAtSilences<R extends Rows>(
  rows: R,
  silent: ReadonlySet<number>,
): (R & { readonly unseen: boolean })[] {
  const cut: (R & { readonly unseen: boolean })[] = [];
  let from = rows.from;
  for (let i = rows.from + 1; i < rows.to; i++) {
    if (!silent.has(i)) continue;
    cut.push({ ...rows, from, to: i, unseen: false }, { ...rows, from: i - 1, to: i + 1, unseen: true });
    from = i;
  }
  return [...cut, { ...rows, from, to: rows.to, unseen: false }];
}

/** What the line across a silence means, for the line under a drawing; empty where there is none. */
export const silenceWords = (timeMs: Float64Array): string =>
  rowsAfterSilence(timeMs).size > 0
    ? " Dashes and dots: the log is silent there, and the line is drawn straight across."
    : "";
