/** The row of a column that lies nearest to a value, as a pointer means it. */
import { cutAtSilences, rowsAfterSilence } from "./silences.ts";

/** Null where none of the rows lies within `most` of the value. */
export function nearestRow(
  column: Float64Array,
  value: number,
  most: number,
  [from, to]: readonly [number, number] = [0, column.length],
): number | null {
  let best = -1;
  for (let i = from; i < to; i++)
    if (
      Number.isFinite(column[i]) &&
      (best < 0 || Math.abs(column[i] - value) < Math.abs(column[best] - value))
    )
      best = i;
  return best >= 0 && Math.abs(column[best] - value) <= most ? best : null;
}

/** First and last of the judged rows, the latter not included; all rows where none is judged. */
export function judgedRows(judged: Uint8Array): readonly [number, number] {
  const from = judged.indexOf(1);
  return from < 0 ? [0, judged.length] : [from, judged.lastIndexOf(1) + 1];
}

/** Stretches of one weight, each up to the first row of the next, so that the line goes on; cut at the silences of the log. */
export function stretchesOf(
  judged: Uint8Array,
  timeMs: Float64Array,
): { from: number; to: number; judged: boolean; unseen: boolean }[] {
  const stretches: { from: number; to: number; judged: boolean }[] = [];
  for (let from = 0; from < judged.length; ) {
    let to = from + 1;
    while (to < judged.length && judged[to] === judged[from]) to++;
    stretches.push({ from, to: Math.min(judged.length, to + 1), judged: judged[from] === 1 });
    from = to;
  }
  return stretches.flatMap((stretch) => cutAtSilences(stretch, rowsAfterSilence(timeMs)));
}
