/** Moments as ringed points, and dimension lines between the two charts: for how long the needle was silent, and the lead. */
import type { Chart, Plugin } from "chart.js";
import type { ChartName, Moments } from "../moments.ts";
import type { Palette } from "../surroundings.ts";
import { segment, stroke, widthOf, write } from "./pen.ts";

export interface DimensionOptions {
  readonly moments: Moments;
  /** The scale of each chart. */
  readonly axes: Readonly<Record<ChartName, string>>;
  readonly palette: Palette;
}

/** Depth of the two dimension lines below the needle chart, px, in a gap of 64. */
const LEVEL_PX = [23, 41] as const;
const ARROW_PX = 6;
const ARROW_HALF_PX = 2.6;

export function dimensionLines({ moments, axes, palette }: DimensionOptions): Plugin<"line"> {
  return {
    id: "dimensions",
    afterDatasetsDraw(chart) {
      if (!chart.scales[axes.error]) return;
      const { left, right } = chart.chartArea;
      const needle = chart.scales[axes.needle];
      const px = (value: number) => chart.scales.x.getPixelForValue(value);
      const inside = (x: number) => x >= left - 0.5 && x <= right + 0.5;
      const level = (k: 0 | 1) => needle.getPixelForValue(1) + LEVEL_PX[k];
      const c = chart.ctx;
      for (const tie of moments.ties) {
        if (!inside(px(tie.x))) continue;
        const end =
          tie.toLevel === "error"
            ? yOf(chart, axes.error, tie.toValue)
            : level(tie.toLevel) + (tie.chart === "needle" ? 3 : -3);
        segment(
          c,
          { colour: palette.outside, width: 1 },
          px(tie.x),
          yOf(chart, axes[tie.chart], tie.fromValue),
          px(tie.x),
          end,
        );
      }
      for (const d of moments.dimensions) {
        const [x1, x2] = [Math.max(left, px(d.from)), Math.min(right, px(d.to))];
        if (x2 <= left || x1 >= right) continue;
        const y = level(d.level);
        segment(c, { colour: palette.outside, width: 1.1 }, x1, y, x2, y);
        // A dimension cut by the end of a row has no arrow there: it goes on.
        if (inside(px(d.from))) arrow(c, palette.outside, x1, y, 1);
        if (inside(px(d.to))) arrow(c, palette.outside, x2, y, -1);
        const face = d.bold ? "bold" : "plain";
        const room = widthOf(c, palette, d.words, face) + 6;
        const style = { face, colour: palette.outside, halo: palette.paper } as const;
        if (x1 - room >= 0) write(c, palette, d.words, x1 - 6, y + 4, { ...style, align: "right" });
        else if (x2 + room <= chart.width) write(c, palette, d.words, x2 + 6, y + 4, style);
        else write(c, palette, d.words, (x1 + x2) / 2, y - 4, { ...style, align: "center" });
      }
      for (const ring of moments.rings) {
        const [x, y] = [px(ring.x), yOf(chart, axes[ring.chart], ring.y)];
        if (!inside(x)) continue;
        c.fillStyle = palette.paper;
        stroke(c, { colour: palette.outside, width: 1.6 }, () => {
          c.arc(x, y, 3.2, 0, 2 * Math.PI);
          c.fill();
        });
        if (ring.words) name(chart, palette, ring.words, x, y, ring.chart, axes);
      }
    },
  };
}

/** A value beyond its chart is drawn at the edge. */
function yOf(chart: Chart, axis: string, value: number): number {
  const scale = chart.scales[axis];
  return scale.getPixelForValue(Math.max(scale.min, Math.min(scale.max, value)));
}

function arrow(c: CanvasRenderingContext2D, colour: string, x: number, y: number, inward: 1 | -1): void {
  stroke(c, { colour, width: 1.1 }, () => {
    c.moveTo(x + inward * ARROW_PX, y - ARROW_HALF_PX);
    c.lineTo(x, y);
    c.lineTo(x + inward * ARROW_PX, y + ARROW_HALF_PX);
  });
}

/** Words beside a ring: A to its left and outside the curve, B and C to the right, where there is room. */
function name(
  chart: Chart,
  palette: Palette,
  words: string,
  x: number,
  y: number,
  on: ChartName,
  axes: Readonly<Record<ChartName, string>>,
): void {
  const c = chart.ctx;
  const room = widthOf(c, palette, words, "italic") + 8;
  const toLeft = on === "error" ? x - room >= chart.chartArea.left : x + room > chart.chartArea.right;
  const zero = yOf(chart, axes[on], 0);
  // Outside the curve as seen from the course; a ring near the line has its words on the free side.
  const rightOfCourse = y >= zero;
  const outward = on === "error" || words.startsWith("C") || toLeft;
  const lower = outward ? rightOfCourse : !rightOfCourse;
  // To the right of A the curve runs on near the ring: its words stand farther out.
  const far = on === "error" && !toLeft ? 11 : 0;
  const dy = lower ? 15 + far : -6 - far;
  const style = { face: "italic", colour: palette["ink-2"], halo: palette.paper } as const;
  write(c, palette, words, x + (toLeft ? -7 : 7), y + dy, { ...style, align: toLeft ? "right" : "left" });
}
