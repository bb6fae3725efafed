/** The words and quiet zones of the stacked charts: titles, grey under a quarter, the course line, miles along the top. */
import type { Plugin } from "chart.js";
import type { Dot } from "../courseColumns.ts";
import type { Palette } from "../surroundings.ts";
import { segment, widthOf, write } from "./pen.ts";

export interface FrameOptions {
  readonly axis: string;
  /** Half the height of the grey zone about 0, in units of the axis. */
  readonly quiet: number;
  readonly title: string;
  readonly palette: Palette;
  /** Said at the right end of the zero line. */
  readonly zeroLabel?: string;
  /** Miles along the top edge, and what they count to. */
  readonly miles?: { readonly ticks: readonly Dot[]; readonly title: string };
}

/** Room for the titles above a chart, px. */
const TITLE_ABOVE_TOP = 4;
const TITLE_ABOVE_MILES = 28;

export function frame(options: FrameOptions): Plugin<"line"> {
  const { axis, quiet, title, palette, zeroLabel, miles } = options;
  const edges = (chart: {
    scales: Record<string, { min: number; max: number; getPixelForValue(v: number): number }>;
  }) => {
    const up = chart.scales[axis];
    return { top: up.getPixelForValue(up.min), bottom: up.getPixelForValue(up.max), up };
  };
  return {
    id: `frame-${axis}`,
    beforeDraw(chart) {
      const { left, right } = chart.chartArea;
      const { up } = edges(chart);
      const y = up.getPixelForValue(-quiet);
      chart.ctx.fillStyle = palette.wash;
      chart.ctx.fillRect(left, y, right - left, up.getPixelForValue(quiet) - y);
    },
    beforeDatasetsDraw(chart) {
      const c = chart.ctx;
      const { left, right } = chart.chartArea;
      const { top, up } = edges(chart);
      const zero = up.getPixelForValue(0);
      segment(c, { colour: palette.ink, width: 1 }, left, zero, right, zero);
      if (zeroLabel)
        write(c, palette, zeroLabel, right + 6, zero + 4, { face: "italic", colour: palette["ink-2"] });
      write(c, palette, title, 0, top - (miles ? TITLE_ABOVE_MILES : TITLE_ABOVE_TOP), {
        face: "bold",
        colour: palette.ink,
      });
      if (!miles) return;
      segment(c, { colour: palette.hair, width: 0.75 }, left, top, right, top);
      const across = chart.scales.x;
      let last = Number.NEGATIVE_INFINITY;
      for (const tick of miles.ticks) {
        const x = across.getPixelForValue(tick.x);
        if (x < left - 0.5 || x > right + 0.5) continue;
        segment(c, { colour: palette["ink-3"], width: 1 }, x, top - 4, x, top);
        if (x - last < 22) continue;
        last = x;
        write(c, palette, String(tick.y), x, top - 8, {
          face: "plain",
          colour: palette["ink-2"],
          align: "center",
        });
      }
      const room =
        chart.width - widthOf(c, palette, title, "bold") - widthOf(c, palette, miles.title, "italic");
      if (room > 8) {
        const style = { face: "italic", colour: palette["ink-2"], align: "right" } as const;
        write(c, palette, miles.title, chart.width - 2, top - TITLE_ABOVE_MILES, style);
      }
    },
  };
}
