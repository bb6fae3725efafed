/** A veil of paper over what is not judged: over the station, and before the course was joined. */
import type { Plugin } from "chart.js";
import type { Palette } from "../surroundings.ts";
import { widthOf, write } from "./pen.ts";

export interface VeilSpan {
  readonly from: number;
  readonly to: number;
  /** One or two short lines of words. */
  readonly words: readonly string[];
}

export interface VeilOptions {
  readonly axis: string;
  readonly spans: readonly VeilSpan[];
  readonly palette: Palette;
}

export function veil({ axis, spans, palette }: VeilOptions): Plugin<"line"> {
  return {
    id: "veil",
    afterDatasetsDraw(chart) {
      const c = chart.ctx;
      const { left, right } = chart.chartArea;
      const across = chart.scales.x;
      const up = chart.scales[axis];
      const [top, bottom] = [up.getPixelForValue(-1), up.getPixelForValue(1)];
      for (const span of spans) {
        const x1 = Math.max(left, across.getPixelForValue(span.from));
        const x2 = Math.min(right, across.getPixelForValue(span.to));
        if (x2 - x1 < 1) continue;
        c.save();
        c.globalAlpha = 0.72;
        c.fillStyle = palette.paper;
        // The coast's hachures reach past the frame at full scale only where the limit is near it.
        c.fillRect(x1, top, x2 - x1, bottom - top);
        c.restore();
        const widest = Math.max(...span.words.map((text) => widthOf(c, palette, text, "italic")));
        if (widest > x2 - x1 + 60) continue;
        // Beside a narrow veil the words lean on the frame's edge, whichever is nearer.
        const middle = Math.max(left + widest / 2 + 2, Math.min(right - widest / 2 - 2, (x1 + x2) / 2));
        const y = up.getPixelForValue(-0.28);
        span.words.forEach((text, k) => {
          const style = {
            face: "italic",
            colour: palette["ink-2"],
            align: "center",
            halo: palette.paper,
          } as const;
          write(c, palette, text, middle, y + 14 * k, style);
        });
      }
    },
  };
}
