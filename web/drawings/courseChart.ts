/** A row of a course as a Chart.js configuration: needle above, track angle error beneath, one axis of time or distance. */

import type { ChartConfiguration, Plugin, ScaleOptionsByType } from "chart.js";
import { bareOptions } from "./bareOptions.ts";
import { type CourseFacts, type CourseSeries, sided } from "./contract.ts";
import { abscissa, beyond, brokenAt, type Dot, dots, isTimed, mileTicks, pegged } from "./courseColumns.ts";
import {
  type CourseRow,
  MINUTE_MS,
  margins,
  QUIET_DEG,
  QUIET_SHARE,
  rowSize,
  SHOWN_DEG,
} from "./courseLayout.ts";
import { veilSpans } from "./judgedWords.ts";
import { momentsOf } from "./moments.ts";
import { coast } from "./plugins/coast.ts";
import { dimensionLines } from "./plugins/dimensionLines.ts";
import { frame } from "./plugins/frame.ts";
import { isolineMiles, isolines } from "./plugins/isolines.ts";
import { TEXT_PX } from "./plugins/pen.ts";
import { spanBar } from "./plugins/spanBar.ts";
import { veil } from "./plugins/veil.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { rowsAfterSilence } from "./silences.ts";
import { clockText, fractionText } from "./words.ts";

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

export function courseChart(row: CourseRow): ChartConfiguration<"line", Dot[]> {
  const { facts, limit, series, palette, narrow } = row;
  const size = rowSize(row);
  const m = margins(narrow);
  const timed = isTimed(series);
  const x = abscissa(series);
  const needle = pegged(dots(x, series.needle));
  const silent = rowsAfterSilence(series.timeMs);
  /** What a line has where it crosses a silence of the log; undefined: as elsewhere. */
  const across =
    <T>(value: T) =>
    ({ p1DataIndex }: { p1DataIndex: number }): T | undefined =>
      silent.has(p1DataIndex) ? value : undefined;
  const common = {
    parsing: false as const,
    pointRadius: 0,
    borderJoinStyle: "round" as const,
    spanGaps: false,
    segment: {
      borderDash: across([6, 3, 1.4, 3]),
      borderWidth: across(1.2),
      borderColor: across(palette["ink-3"]),
    },
  };
  const outside = {
    ...common,
    segment: {},
    yAxisID: "needle",
    borderColor: palette.outside,
    borderWidth: 3.4,
  };
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
  const yScales: Record<string, unknown> = {
    needle: {
      ...upright("needle", 1, size.needle),
      afterBuildTicks: setTicks([...LEVELS.keys()]),
      grid: { drawOnChartArea: false, tickLength: 4, tickColor: palette["ink-3"] },
      ticks: { callback: levelText, font: textFont, color: palette["ink-2"], autoSkip: false, padding: 3 },
    },
  };
  if (timed) {
    yScales.gap = {
      ...upright("error", 1, size.gap),
      weight: 2,
      border: { display: false },
      grid: { display: false },
      ticks: { display: false },
    };
    yScales.error = {
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
  const moments = momentsOf(facts.excursions, series);
  const plugins: Plugin<"line">[] = [
    frame({
      axis: "needle",
      quiet: QUIET_SHARE,
      title: `Needle, share of full scale${narrow ? "" : ` (${facts.scale.label})`}${row.continued ? ", continued" : ""}`,
      palette,
      ...(narrow ? {} : { zeroLabel: "course" }),
      miles: {
        ticks: mileTicks(x, series.distanceToFixNm, mileStep(row, timed)),
        title: milesTitle(facts, narrow),
      },
    }),
    isolines({
      axis: "needle",
      scale: facts.scale,
      miles: isolineMiles(facts.scale, typicalDistance(series)),
      x,
      distanceNm: series.distanceToFixNm,
      namesOn: moments.rings.some((ring) => ring.chart === "needle" && ring.y < 0) ? 1 : -1,
      palette,
    }),
    ...(limit === null
      ? []
      : [
          coast({
            axis: "needle",
            limit,
            label: `${fractionText(limit)} scale`,
            palette,
            labelOutside: !narrow,
          }),
        ]),
    veil({ axis: "needle", spans: veilSpans(facts, series), palette }),
    spanBar(row.marked, palette),
  ];
  if (timed) {
    plugins.splice(1, 0, frame({ axis: "error", quiet: QUIET_DEG, title: "Track angle error", palette }));
    plugins.push(
      dimensionLines({
        moments,
        axes: { needle: "needle", error: "error" },
        palette,
      }),
    );
  }
  return {
    type: "line",
    data: {
      datasets: [
        ...[1, -1].flatMap((side) =>
          limit === null
            ? []
            : [
                {
                  ...outside,
                  label: `beyond ${fractionText(limit)} scale, ${side > 0 ? "right" : "left"}`,
                  data: beyond(brokenAt(needle, silent), side * limit),
                  fill: { value: side * limit },
                  backgroundColor: palette["outside-wash"],
                  order: 1,
                },
              ],
        ),
        {
          ...common,
          label: "needle",
          yAxisID: "needle",
          data: needle,
          borderColor: palette.ink,
          borderWidth: 2,
          order: 2,
        },
        ...(timed
          ? [
              {
                ...common,
                label: "track angle error",
                yAxisID: "error",
                data: dots(x, series.trackAngleErrorDeg),
                borderColor: palette.ink,
                borderWidth: 2,
                order: 2,
              },
            ]
          : []),
      ],
    },
    options: {
      ...bareOptions(row.devicePixelRatio, { top: m.top, right: size.width - m.left - size.plot }),
      scales: {
        x: {
          type: "linear",
          position: "bottom",
          min: row.from,
          max: row.to,
          afterFit: (scale) => {
            scale.height = size.height - m.top - size.needle - size.gap - size.error;
          },
          afterBuildTicks: setTicks(timed ? ticksWithin(row.from, row.to, minuteStep) : []),
          border: { color: palette["ink-3"] },
          grid: { drawOnChartArea: false, tickLength: 4, tickColor: palette["ink-3"] },
          ticks: {
            callback: (value) => clockText(Number(value)),
            font: textFont,
            color: palette["ink-2"],
            autoSkip: false,
            maxRotation: 0,
            padding: 2,
          },
        },
        ...(yScales as Record<string, ScaleOptionsByType<"linear">>),
      },
    } as ChartConfiguration<"line", Dot[]>["options"] & object,
    plugins,
  };
}

const setTicks = (values: readonly number[]) => (scale: { ticks: { value: number }[] }) => {
  scale.ticks = values.map((value) => ({ value }));
};

function mileStep(row: CourseRow, timed: boolean): number {
  // 90 kt, a usual ground speed of a school aircraft, spaces the miles well enough; a whole mile at least.
  const pxPerMile = timed
    ? row.pxPerUnit * MINUTE_MS * (60 / (row.facts.groundSpeedKt ?? 90))
    : row.pxPerUnit;
  return tickStep(pxPerMile, 20, [1, 2, 5, 10, 20, 50]);
}

const milesTitle = (facts: CourseFacts, narrow: boolean): string => {
  if (facts.fix === null) return "NM";
  return narrow ? "NM" : `NM ${facts.form === "from" ? "from" : "to"} ${facts.fix}`;
};

/** The median distance of the judged rows, for choosing isolines. */
function typicalDistance(series: CourseSeries): number {
  const judged = Array.from(series.distanceToFixNm).filter(
    (d, i) => series.judged[i] === 1 && Number.isFinite(d),
  );
  judged.sort((a, b) => a - b);
  return judged[judged.length >> 1] ?? 5;
}
