/** The moment pointed at, as a 2-2 dashed line through all charts of a row. */
import type { Plugin } from "chart.js";
import type { Palette } from "../surroundings.ts";
import { segment } from "./pen.ts";

/** `place` gives the abscissa of the moment, or null. */
export function cursorLine(place: () => number | null, palette: Palette): Plugin<"line"> {
  return {
    id: "cursor",
    afterDraw(chart) {
      const value = place();
      if (value === null) return;
      const across = chart.scales.x;
      if (value < across.min || value > across.max) return;
      const x = across.getPixelForValue(value);
      segment(
        chart.ctx,
        { colour: palette.ink, width: 1, dash: [2, 2] },
        x,
        chart.chartArea.top - 3,
        x,
        chart.chartArea.bottom + 3,
      );
    },
  };
}
