/** The stretch that a finding rests on: a bar over the charts of a row, its ends let down as 2-2 dashed lines. */
import type { Plugin } from "chart.js";
import type { MomentSpan } from "../cursor.ts";
import type { Palette } from "../surroundings.ts";
import { segment } from "./pen.ts";

const BAR = 4;

/** `place` gives the stretch on the axis, or null. */
export function spanBar(place: () => MomentSpan | null, palette: Palette): Plugin<"line"> {
  return {
    id: "span",
    afterDraw(chart) {
      const span = place();
      const { x } = chart.scales;
      if (!span || span.to < x.min || span.from > x.max) return;
      const { top, bottom } = chart.chartArea;
      const at = (value: number) => x.getPixelForValue(Math.max(x.min, Math.min(x.max, value)));
      const [from, to] = [at(span.from), Math.max(at(span.to), at(span.from) + BAR)];
      segment(chart.ctx, { colour: palette.outside, width: BAR }, from, top - BAR, to, top - BAR);
      for (const end of [span.from, span.to]) {
        if (end < x.min || end > x.max) continue;
        segment(
          chart.ctx,
          { colour: palette.outside, width: 1, dash: [2, 2] },
          at(end),
          top - BAR,
          at(end),
          bottom,
        );
      }
    },
  };
}
