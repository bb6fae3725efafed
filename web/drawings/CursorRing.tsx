/** The moment pointed at as a ring on a plan; on its own, so that a plan is not drawn anew with every moment. */
import { type Cursor, rowAt } from "./cursor.ts";
import type { Point } from "./windGeometry.ts";

/** `every`: a point stands for so many rows of the times. */
export function CursorRing(props: {
  cursor: Cursor;
  timeMs: Float64Array;
  points: readonly Point[];
  every?: number;
}) {
  const row = rowAt(props.timeMs, props.cursor.value);
  if (row === null) return null;
  const [x, y] = props.points[Math.floor(row / (props.every ?? 1))];
  return Number.isFinite(x) && Number.isFinite(y) ? <circle class="moment" cx={x} cy={y} r={4.4} /> : null;
}
