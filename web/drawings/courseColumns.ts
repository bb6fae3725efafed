/** The columns of a course as the chart takes them: one abscissa (time, or distance where there is no time). */
import type { CourseSeries } from "./contract.ts";

export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** Whether the abscissa is a time. */
export const isTimed = (series: CourseSeries): boolean =>
  series.timeMs.length > 0 && Number.isFinite(series.timeMs[0]);

/** Milliseconds of UTC, or NM along the course where the log has no times. */
export const abscissa = (series: CourseSeries): Float64Array =>
  isTimed(series) ? series.timeMs : series.alongNm;

/** The points of a column; where the value is not known the line breaks. */
export function dots(x: Float64Array, y: Float64Array): Dot[] {
  return Array.from(x, (value, i) => ({ x: value, y: y[i] }));
}

/** The line without the steps to some of its dots. */
export const brokenAt = (line: readonly Dot[], rows: ReadonlySet<number>): Dot[] =>
  line.flatMap((dot, i) => (rows.has(i) ? [{ x: dot.x, y: Number.NaN }, dot] : [dot]));

/**
 * The stretches beyond a limit on one side (`limit` positive: right of it, negative: left of it), cut exactly
 * where the line crosses it, broken by NaN between them.
 */
export function beyond(line: readonly Dot[], limit: number): Dot[] {
  const isBeyond = (y: number) => (limit > 0 ? y > limit : y < limit);
  const out: Dot[] = [];
  for (let i = 0; i < line.length; i++) {
    const here = line[i];
    const before = line[i - 1];
    if (
      before &&
      isBeyond(before.y) !== isBeyond(here.y) &&
      Number.isFinite(before.y) &&
      Number.isFinite(here.y)
    ) {
      const share = (limit - before.y) / (here.y - before.y);
      const crossing = { x: before.x + share * (here.x - before.x), y: limit };
      out.push(crossing);
      if (!isBeyond(here.y)) out.push({ x: crossing.x, y: Number.NaN });
    }
    if (isBeyond(here.y)) out.push(here);
    else if (!Number.isFinite(here.y) && out.length > 0) out.push({ x: here.x, y: Number.NaN });
  }
  return out;
}

/** A needle stops at its peg: values past full scale are drawn at it. */
export function pegged(line: readonly Dot[]): Dot[] {
  return line.map(({ x, y }) => ({ x, y: Math.max(-1, Math.min(1, y)) }));
}

/** Where a column passes whole miles, in order of the abscissa: the ticks of the miles to or from the fix. */
export function mileTicks(x: Float64Array, miles: Float64Array, step = 1): Dot[] {
  const ticks: Dot[] = [];
  for (let i = 1; i < x.length; i++) {
    const [a, b] = [miles[i - 1] / step, miles[i] / step];
    if (!Number.isFinite(a) || !Number.isFinite(b) || a === b) continue;
    const first = Math.ceil(Math.min(a, b));
    for (let mile = first; mile <= Math.max(a, b); mile++) {
      if (mile === a && i > 1) continue; // the row before had it
      ticks.push({ x: x[i - 1] + ((mile - a) / (b - a)) * (x[i] - x[i - 1]), y: mile * step });
    }
  }
  return ticks.sort((p, q) => p.x - q.x);
}

/** Stretches of rows that are not judged, as spans of the abscissa. */
export function unjudged(
  x: Float64Array,
  judged: Uint8Array,
): { from: number; to: number; rows: [number, number] }[] {
  const spans: { from: number; to: number; rows: [number, number] }[] = [];
  for (let i = 0; i < x.length; i++) {
    if (judged[i] === 1) continue;
    let end = i;
    while (end + 1 < x.length && judged[end + 1] !== 1) end++;
    // The veil reaches to the first judged row on either side.
    spans.push({ from: x[Math.max(0, i - 1)], to: x[Math.min(x.length - 1, end + 1)], rows: [i, end] });
    i = end;
  }
  return spans;
}
