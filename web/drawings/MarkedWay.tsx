/** The way flown over the stretch that a finding rests on, on a plan; on its own, as the ring of the moment is. */
import { type Cursor, markedSpan } from "./cursor.ts";
import { pathThrough } from "./path.ts";
import type { Point } from "./windGeometry.ts";

export function MarkedWay(props: { cursor: Cursor; timeMs: Float64Array; points: readonly Point[] }) {
  const span = markedSpan(props.cursor).value;
  if (!span) return null;
  const { timeMs } = props;
  const marked = props.points.filter((_, i) => timeMs[i] >= span.from && timeMs[i] <= span.to);
  return marked.length > 1 ? <path class="marked" d={pathThrough(marked)} /> : null;
}
