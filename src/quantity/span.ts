/** A run of samples, half open: start is in it, end is not. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export const spanLength = (span: Span): number => Math.max(0, span.end - span.start);

/** A column of so many rows: 1 in the span, else 0. */
export const maskOf = ({ start, end }: Span, length: number): Uint8Array =>
  new Uint8Array(length).fill(1, start, end);

/** First index whose value is not below the limit, in a column that never falls. */
export function firstAtOrAfter(
  column: ArrayLike<number>,
  limit: number,
  start = 0,
  end = column.length,
): number {
  let low = start;
  let high = end;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (column[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
