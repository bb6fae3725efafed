/** One row of a course's figure: needle and track angle error, with the moment pointed at. */
import { useSignalEffect } from "@preact/signals";
import { Chart, Filler, LinearScale, LineController, LineElement, PointElement } from "chart.js";
import { useLayoutEffect, useRef } from "preact/hooks";
import { courseChart } from "./courseChart.ts";
import { isTimed } from "./courseColumns.ts";
import { type CourseRow, margins, rowSize } from "./courseLayout.ts";
import { type Cursor, markedSpan } from "./cursor.ts";
import { drawnLater } from "./InTurn.tsx";
import { PAPER_PIXEL_RATIO } from "./scale.ts";
import { clockText } from "./words.ts";

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

type CourseCanvasProps = Omit<CourseRow, "marked" | "devicePixelRatio"> & {
  title: string;
  cursorSignal: Cursor;
  paper: boolean;
};

export function CourseCanvas(props: CourseCanvasProps) {
  const { cursorSignal: cursor, series, title, paper, from, to, pxPerUnit, narrow } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<Chart<"line"> | null>(null);
  const size = rowSize(props);
  const timed = isTimed(series);
  useLayoutEffect(() => {
    if (!canvas.current) return;
    const marked = () => (paper || !timed ? null : markedSpan(cursor).peek());
    canvas.current.width = size.width;
    canvas.current.height = size.height;
    const ratio = paper ? PAPER_PIXEL_RATIO : Math.max(1, devicePixelRatio);
    const picture = canvas.current;
    return drawnLater(() => {
      const drawn = new Chart(picture, courseChart({ ...props, marked, devicePixelRatio: ratio }) as never);
      chart.current = drawn as unknown as Chart<"line">;
      return () => {
        drawn.destroy();
        chart.current = null;
      };
    });
  }, [
    series,
    props.facts,
    from,
    to,
    pxPerUnit,
    narrow,
    props.palette,
    paper,
    size.width,
    size.height,
    title,
  ]);
  useSignalEffect(() => {
    void markedSpan(cursor).value;
    chart.current?.draw();
  });
  const point = (event: PointerEvent) => {
    if (!timed) return;
    const left = (event.currentTarget as HTMLElement).getBoundingClientRect().left;
    const moment = from + (event.clientX - left - margins(narrow).left) / pxPerUnit;
    cursor.value = moment >= from && moment <= to ? Math.round(moment) : null;
  };
  const name = `${title}: needle${timed ? ` and track angle error against time, ${clockText(from)} to ${clockText(to)} UTC` : " against distance"}`;
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={name}
      onPointerMove={point}
      onPointerDown={point}
      onPointerLeave={() => {
        cursor.value = null;
      }}
    />
  );
}
