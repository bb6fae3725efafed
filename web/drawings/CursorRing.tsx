/** The moment pointed at as a ring on a plan; on its own, so that a plan is not drawn anew with every moment. */
import { type Cursor, rowAt } from "./cursor.ts";
import type { Point } from "./windGeometry.ts";

export function CursorRing(props: { cursor: Cursor; timeMs: Float64Array; points: readonly Point[] }) {
  const row = rowAt(props.timeMs, props.cursor.value);
  if (row === null) return null;
  const [x, y] = props.points[row];
  return Number.isFinite(x) && Number.isFinite(y) ? <circle class="moment" cx={x} cy={y} r={4.4} /> : null;
}
