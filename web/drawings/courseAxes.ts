/** The axes of a row of a course for Chart.js: time or distance below, the needle above, the track angle error beneath it. */
import type { ScaleOptionsByType } from "chart.js";
import { sided } from "./contract.ts";
import { isTimed } from "./courseColumns.ts";
import { type CourseRow, MINUTE_MS, margins, rowSize, SHOWN_DEG } from "./courseLayout.ts";
import { TEXT_PX } from "./plugins/pen.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { clockText } from "./words.ts";

/** Shares of full scale that are named, right of course positive. */
const LEVELS = new Map([
  [-1, "1 L"],
  [-0.5, "½ L"],
  [0, "0"],
  [0.5, "½ R"],
  [1, "1 R"],
]);
const levelText = (value: number): string => LEVELS.get(value) ?? "";
const degreeText = (value: number): string => sided(value, 0, "°");

const setTicks = (values: readonly number[]) => (scale: { ticks: { value: number }[] }) => {
  scale.ticks = values.map((value) => ({ value }));
};

export function courseAxes(row: CourseRow): Record<string, ScaleOptionsByType<"linear">> {
  const { palette } = row;
  const size = rowSize(row);
  const m = margins(row.narrow);
  const timed = isTimed(row.series);
  const textFont = { family: palette.sans, size: TEXT_PX };
  const upright = (axis: "needle" | "error", shown: number, height: number) =>
    ({
      type: "linear",
      position: "left",
      stack: "charts",
      stackWeight: height,
      // Weights order the stack, the lowest number on top.
      weight: axis === "needle" ? 3 : 1,
      reverse: true,
      min: -shown,
      max: shown,
      afterFit: (scale: { width: number }) => {
        scale.width = m.left;
      },
      border: { color: palette["ink-3"] },
    }) as const;
  const minuteStep = tickStep(row.pxPerUnit * MINUTE_MS, 46, [1, 2, 5, 10, 15, 30, 60, 120]) * MINUTE_MS;
  const axes: Record<string, unknown> = {
    needle: {
      ...upright("needle", 1, size.needle),
      afterBuildTicks: setTicks([...LEVELS.keys()]),
      grid: { drawOnChartArea: false, tickLength: 4, tickColor: palette["ink-3"] },
      ticks: { callback: levelText, font: textFont, color: palette["ink-2"], autoSkip: false, padding: 3 },
    },
  };
  if (timed) {
    axes.gap = {
      ...upright("error", 1, size.gap),
      weight: 2,
      border: { display: false },
      grid: { display: false },
      ticks: { display: false },
    };
    axes.error = {
      ...upright("error", SHOWN_DEG, size.error),
      afterBuildTicks: setTicks([-30, -20, -10, 0, 10, 20, 30]),
      grid: { tickLength: 4, tickColor: palette["ink-3"], color: palette.hair, lineWidth: 0.75 },
      ticks: {
        callback: (value: number) => (Math.abs(value) === SHOWN_DEG ? "" : degreeText(value)),
        font: textFont,
        color: palette["ink-2"],
        autoSkip: false,
        padding: 3,
      },
    };
  }
  axes.x = {
    type: "linear",
    position: "bottom",
    min: row.from,
    max: row.to,
    afterFit: (scale: { height: number }) => {
      scale.height = size.height - m.top - size.needle - size.gap - size.error;
    },
    afterBuildTicks: setTicks(timed ? ticksWithin(row.from, row.to, minuteStep) : []),
    border: { color: palette["ink-3"] },
    grid: { drawOnChartArea: false, tickLength: 4, tickColor: palette["ink-3"] },
    ticks: {
      callback: (value: number) => clockText(Number(value)),
      font: textFont,
      color: palette["ink-2"],
      autoSkip: false,
      maxRotation: 0,
      padding: 2,
    },
  };
  return axes as Record<string, ScaleOptionsByType<"linear">>;
}
