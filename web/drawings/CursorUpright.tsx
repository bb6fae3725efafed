/** The moment pointed at as an upright dashed line, with a ring on each line that it crosses. */
import { type Cursor, rowAt } from "./cursor.ts";
import { line } from "./path.ts";

export function CursorUpright(props: {
  cursor: Cursor;
  timeMs: Float64Array;
  /** Abscissa of a row; NaN where it is not shown. */
  xOf: (row: number) => number;
  top: number;
  bottom: number;
  /** Where lines stand at that row. */
  ringsAt?: (row: number) => readonly number[];
}) {
  const { cursor, timeMs, xOf, top, bottom, ringsAt } = props;
  const row = rowAt(timeMs, cursor.value);
  if (row === null) return null;
  const x = xOf(row);
  if (!Number.isFinite(x)) return null;
  return (
    <g class="cursor-mark">
      <path class="cursor-line" d={line(x, top, x, bottom)} />
      {(ringsAt?.(row) ?? []).filter(Number.isFinite).map((y, i) => (
        <circle key={i} class="moment" cx={x} cy={y} r={4.4} />
      ))}
    </g>
  );
}
