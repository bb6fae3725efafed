/** A drawing along an axis of distance that is pointed at: the row under the pointer is the moment for every drawing of the sheet. */
import type { ComponentChildren } from "preact";
import type { Cursor } from "./cursor.ts";

export function PointedAlong(props: {
  cursor: Cursor;
  timeMs: Float64Array;
  /** Edges of the plot, px from the left of the drawing. */
  plot: { readonly left: number; readonly right: number };
  /** The row that lies so far from the left edge of the plot, px; null where none does. */
  rowAt: (px: number) => number | null;
  children: ComponentChildren;
}) {
  const { cursor, timeMs, plot, rowAt, children } = props;
  const point = (event: PointerEvent) => {
    const at = event.clientX - (event.currentTarget as Element).getBoundingClientRect().left;
    const row = at < plot.left || at > plot.right ? null : rowAt(at - plot.left);
    cursor.value = row === null || !Number.isFinite(timeMs[row]) ? null : timeMs[row];
  };
  return (
    <div
      onPointerMove={point}
      onPointerDown={point}
      onPointerLeave={() => {
        cursor.value = null;
      }}
    >
      {children}
    </div>
  );
}
