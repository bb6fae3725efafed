/** The wind against time as a Chart.js configuration: where it comes from above, its speed beneath, a stroke a leg. */

import type { ChartConfiguration, Plugin, ScaleOptionsByType } from "chart.js";
import { trueDirection } from "../../src/index.ts";
import { bareOptions } from "./bareOptions.ts";
import type { Dot } from "./courseColumns.ts";
import { MINUTE_MS } from "./courseLayout.ts";
import { TEXT_PX } from "./plugins/pen.ts";
import { type DoubtBand, type UnknownSpan, windDoubt } from "./plugins/windDoubt.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { TICK_DEG, TICK_KT, type WindRow, windRowSize } from "./windChartLayout.ts";
import { type Known, type Level, runs, type WindStroke } from "./windStrokes.ts";
import { clockText } from "./words.ts";

export function windTimeChart(row: WindRow): ChartConfiguration<"line", Dot[]> {
  const { strokes, window, palette } = row;
  const size = windRowSize(row);
  const font = { family: palette.sans, size: TEXT_PX };
  const wind = {
    parsing: false as const,
    pointRadius: 0,
    spanGaps: false,
    borderColor: palette.wind,
    borderCapStyle: "butt" as const,
  };
  const upright = (min: number, max: number, weight: number, stackWeight: number, ticks: number[]) => ({
    type: "linear",
    position: "left",
    stack: "charts",
    stackWeight,
    weight,
    min,
    max,
    afterFit: (scale: { width: number }) => {
      scale.width = size.left;
    },
    afterBuildTicks: setTicks(ticks),
    border: { color: palette["ink-3"] },
    grid: { tickLength: 4, tickColor: palette["ink-3"], color: palette.hair, lineWidth: 0.75 },
  });
  const ticks = { font, color: palette["ink-2"], autoSkip: false, padding: 3 };
  const scales: Record<string, unknown> = {
    speed: {
      ...upright(0, window.topKt, 1, size.speed, ticksWithin(0, window.topKt, TICK_KT)),
      ticks: { ...ticks, callback: (value: number) => String(value) },
    },
  };
  const datasets = [
    {
      ...wind,
      label: "speed on straights",
      yAxisID: "speed",
      borderWidth: 2.4,
      data: flat(strokes, "speed", false),
    },
    {
      ...wind,
      label: "speed in turns",
      yAxisID: "speed",
      borderWidth: 1.2,
      data: flat(strokes, "speed", true),
    },
    {
      ...wind,
      label: "along the track",
      yAxisID: "speed",
      borderWidth: 1.6,
      borderDash: [6, 3],
      data: flat(strokes, "along"),
    },
  ];
  const continued = row.continued ? ", continued" : "";
  const plugins: Plugin<"line">[] = [
    windDoubt({
      axis: "speed",
      title: `Speed, kt${window.direction ? "" : continued}`,
      bands: strokes.flatMap((stroke) => [
        ...bandOf(stroke, stroke.speed),
        ...bandOf(stroke, stroke.along, row.narrow),
      ]),
      unknown: unknownSpans(strokes, (known) => known === "none"),
      palette,
    }),
  ];
  if (window.direction) {
    const { min, max } = window.direction;
    scales.direction = {
      ...upright(min, max, 3, size.direction, ticksWithin(min, max, TICK_DEG)),
      ticks: { ...ticks, callback: (value: number) => trueDirection(value) },
    };
    scales.gap = {
      ...upright(0, 1, 2, size.gap, []),
      border: { display: false },
      grid: { display: false },
      ticks: { display: false },
    };
    datasets.push(
      {
        ...wind,
        label: "direction on straights",
        yAxisID: "direction",
        borderWidth: 2.4,
        data: flat(strokes, "direction", false),
      },
      {
        ...wind,
        label: "direction in turns",
        yAxisID: "direction",
        borderWidth: 1.2,
        data: flat(strokes, "direction", true),
      },
    );
    plugins.push(
      windDoubt({
        axis: "direction",
        title: `Wind from, true${continued}`,
        bands: strokes.flatMap((stroke) => bandOf(stroke, stroke.direction)),
        unknown: unknownSpans(strokes, (known) => known !== "full"),
        palette,
      }),
    );
  }
  const step = tickStep(row.pxPerMs * MINUTE_MS, 46, [1, 2, 5, 10, 15, 30, 60, 120]) * MINUTE_MS;
  return {
    type: "line",
    data: { datasets },
    options: {
      ...bareOptions(row.devicePixelRatio, { top: size.top, right: size.width - size.left - size.plot }),
      scales: {
        x: {
          type: "linear",
          position: "bottom",
          min: row.from,
          max: row.to,
          afterFit: (scale) => {
            scale.height = size.height - size.top - size.direction - size.gap - size.speed;
          },
          afterBuildTicks: setTicks(ticksWithin(row.from, row.to, step)),
          border: { color: palette["ink-3"] },
          grid: { drawOnChartArea: false, tickLength: 4, tickColor: palette["ink-3"] },
          ticks: { ...ticks, callback: (value) => clockText(Number(value)), maxRotation: 0, padding: 2 },
        },
        ...(scales as Record<string, ScaleOptionsByType<"linear">>),
      },
    } as ChartConfiguration<"line", Dot[]>["options"] & object,
    plugins,
  };
}

const setTicks = (values: readonly number[]) => (scale: { ticks: { value: number }[] }) => {
  scale.ticks = values.map((value) => ({ value }));
};

/** One level piece a leg, broken between legs. */
function flat(strokes: readonly WindStroke[], what: "direction" | "speed" | "along", turn?: boolean): Dot[] {
  return strokes.flatMap((stroke) => {
    const level = stroke[what];
    if (!level || (turn !== undefined && stroke.turn !== turn)) return [];
    const { value } = level;
    return [
      { x: stroke.from, y: value },
      { x: stroke.to, y: value },
      { x: stroke.to, y: Number.NaN },
    ];
  });
}

function bandOf(
  stroke: WindStroke,
  level: (Level & { behind?: boolean }) | null,
  narrow = false,
): DoubtBand[] {
  if (!level) return [];
  const sense = level.behind === undefined ? null : level.behind ? "behind" : "ahead";
  const words = sense && `${Math.round(level.value)} kt ${narrow ? "" : "from "}${sense}`;
  return [
    {
      from: stroke.from,
      to: stroke.to,
      value: level.value,
      low: level.low,
      high: level.high,
      open: sense !== null,
      words,
    },
  ];
}

/** Why there is no stroke, the longest words that fit. */
const WHY: Readonly<Record<Known, readonly string[]>> = {
  full: [],
  light: ["too light for a direction", "too light"],
  along: ["only along the track", "along only"],
  none: ["not known"],
};

const unknownSpans = (strokes: readonly WindStroke[], wanted: (known: Known) => boolean): UnknownSpan[] =>
  runs(strokes, wanted).map(({ from, to, known }) => ({ from, to, words: WHY[known] }));
