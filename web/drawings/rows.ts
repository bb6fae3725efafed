/** A course that is longer than the column goes on in the next row, like a line of text, at the same scale. */

export interface RowLayout {
  /** Span of the abscissa that each row covers, first to last. */
  readonly rows: readonly { readonly from: number; readonly to: number }[];
  /** Pixels for one unit of the abscissa. */
  readonly pxPerUnit: number;
}

/**
 * Cuts a span into rows. `pxPerUnit` is the fixed scale; a row holds as many whole `step`s as fit in `roomPx`,
 * at least one, and every row but the last is full.
 * With `fit` there is one row, as wide as the room.
 */
export function cutRows(span: {
  from: number;
  to: number;
  pxPerUnit: number;
  step: number;
  roomPx: number;
  fit: boolean;
}): RowLayout {
  const { from, to, pxPerUnit, step, roomPx, fit } = span;
  if (!(to > from)) throw new RangeError(`invalid span: ${from} to ${to}`);
  if (!(pxPerUnit > 0) || !(roomPx > 0))
    throw new RangeError(`invalid scale: ${pxPerUnit} px in ${roomPx} px`);
  if (fit) return { rows: [{ from, to }], pxPerUnit: roomPx / (to - from) };
  if ((to - from) * pxPerUnit <= roomPx) return { rows: [{ from, to }], pxPerUnit };
  const length = Math.max(1, Math.floor(roomPx / (step * pxPerUnit))) * step;
  const rows: { from: number; to: number }[] = [];
  for (let start = from; start < to; start += length)
    rows.push({ from: start, to: Math.min(start + length, to) });
  return { rows, pxPerUnit };
}

/** The step of ticks, from a ladder, that keeps them at least `leastPx` apart; the last of the ladder at worst. */
export function tickStep(pxPerUnit: number, leastPx: number, ladder: readonly number[]): number {
  return ladder.find((step) => step * pxPerUnit >= leastPx) ?? ladder[ladder.length - 1];
}

/** Whole multiples of a step inside a span. */
export function ticksWithin(from: number, to: number, step: number): number[] {
  const ticks: number[] = [];
  for (let k = Math.ceil(from / step); k * step <= to; k++) ticks.push(k * step);
  return ticks;
}
