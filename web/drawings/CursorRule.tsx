/** The moment pointed at, as a 2-2 dashed line over a chart: moved on its own, so that no chart is drawn anew for it. */
import { useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import { type Cursor, rowAt } from "./cursor.ts";

export function CursorRule(props: {
  cursor: Cursor;
  timeMs: Float64Array;
  from: number;
  to: number;
  pxPerMs: number;
  /** Where the time axis begins, and where the charts stand, px of the row. */
  left: number;
  top: number;
  height: number;
}) {
  const { cursor, timeMs, from, to, pxPerMs, left, top, height } = props;
  const rule = useRef<HTMLSpanElement>(null);
  useSignalEffect(() => {
    const row = rowAt(timeMs, cursor.value);
    const moment = row === null ? Number.NaN : timeMs[row];
    if (!rule.current) return;
    const inside = moment >= from && moment <= to;
    rule.current.style.visibility = inside ? "visible" : "hidden";
    if (inside) rule.current.style.transform = `translateX(${left + (moment - from) * pxPerMs}px)`;
  });
  return (
    <span
      class="cursor-rule screen"
      aria-hidden="true"
      ref={rule}
      style={{ top: `${top}px`, height: `${height}px` }}
    />
  );
}
