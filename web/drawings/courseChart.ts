/** A row of a course as a Chart.js configuration: needle above, track angle error beneath, one axis of time or distance. */

import type { ChartConfiguration, Plugin } from "chart.js";
import { bareOptions } from "./bareOptions.ts";
import type { CourseFacts, CourseSeries } from "./contract.ts";
import { courseAxes } from "./courseAxes.ts";
import { abscissa, beyond, brokenAt, type Dot, dots, isTimed, mileTicks, pegged } from "./courseColumns.ts";
import { type CourseRow, MINUTE_MS, margins, QUIET_DEG, QUIET_SHARE, rowSize } from "./courseLayout.ts";
import { veilSpans } from "./judgedWords.ts";
import { momentsOf } from "./moments.ts";
import { coast } from "./plugins/coast.ts";
import { dimensionLines } from "./plugins/dimensionLines.ts";
import { frame } from "./plugins/frame.ts";
import { isolineMiles, isolines } from "./plugins/isolines.ts";
import { spanBar } from "./plugins/spanBar.ts";
import { veil } from "./plugins/veil.ts";
import { tickStep } from "./rows.ts";
import { rowsAfterSilence } from "./silences.ts";
import { fractionText } from "./words.ts";

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
      scales: courseAxes(row),
    } as ChartConfiguration<"line", Dot[]>["options"] & object,
    plugins,
  };
}

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
