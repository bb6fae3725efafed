/** Behind the strokes of a wind: its doubt as a band over each leg, and where it is not known grey paper with a word. */
import type { Plugin } from "chart.js";
import type { Palette } from "../surroundings.ts";
import type { Level } from "../windStrokes.ts";
import { segment, stroke, widthOf, write } from "./pen.ts";

export interface DoubtBand extends Level {
  readonly from: number;
  readonly to: number;
  /** Filled where the value is known, an open dashed frame where it is but a part of it. */
  readonly open: boolean;
  /** Said above it, where there is room. */
  readonly words: string | null;
}

export interface UnknownSpan {
  readonly from: number;
  readonly to: number;
  /** The longest that fits is said, or nothing. */
  readonly words: readonly string[];
}

export interface WindDoubtOptions {
  readonly axis: string;
  readonly title: string;
  readonly bands: readonly DoubtBand[];
  readonly unknown: readonly UnknownSpan[];
  readonly palette: Palette;
}

/** A band is at least so wide, so that a short turn is seen at all, px. */
const LEAST_PX = 1.5;
/** Clear of the highest tick, px. */
const TITLE_ABOVE_PX = 15;

export function windDoubt({ axis, title, bands, unknown, palette }: WindDoubtOptions): Plugin<"line"> {
  return {
    id: `doubt-${axis}`,
    beforeDatasetsDraw(chart) {
      const c = chart.ctx;
      const { left, right } = chart.chartArea;
      const across = chart.scales.x;
      const up = chart.scales[axis];
      const [top, bottom] = [up.getPixelForValue(up.max), up.getPixelForValue(up.min)];
      const clip = (from: number, to: number): [number, number] => [
        Math.max(left, across.getPixelForValue(from)),
        Math.min(right, across.getPixelForValue(to)),
      ];
      write(c, palette, title, 0, top - TITLE_ABOVE_PX, { face: "bold", colour: palette.ink });
      for (const span of unknown) {
        const [x1, x2] = clip(span.from, span.to);
        if (x2 <= x1) continue;
        c.fillStyle = palette.wash;
        c.fillRect(x1, top, x2 - x1, bottom - top);
        const words = span.words.find((text) => widthOf(c, palette, text, "italic") + 8 <= x2 - x1);
        const style = { face: "italic", colour: palette["ink-2"], align: "center" } as const;
        if (words) write(c, palette, words, (x1 + x2) / 2, (top + bottom) / 2 + 4, style);
      }
      for (const band of bands) {
        const [x1, x2] = clip(band.from, band.to);
        if (x2 < x1) continue;
        const width = Math.max(LEAST_PX, x2 - x1);
        const y1 = Math.max(top, up.getPixelForValue(band.high));
        const y2 = Math.min(bottom, up.getPixelForValue(band.low));
        if (band.open) {
          stroke(c, { colour: palette.wind, width: 0.9, dash: [3, 2] }, () => c.rect(x1, y1, width, y2 - y1));
        } else {
          c.fillStyle = palette["wind-wash"];
          c.fillRect(x1, y1, width, y2 - y1);
          // hair edges keep the band where a light wash is lost, as on a poor printer
          for (const y of [y1, y2]) segment(c, { colour: palette.wind, width: 0.75 }, x1, y, x1 + width, y);
        }
        if (!band.words || widthOf(c, palette, band.words, "plain") + 6 > x2 - x1) continue;
        // clear of the frame, or where the chart ends there, of the stroke
        const above = y1 - 5 < top + 10 ? null : y1 - 5;
        const below = y2 + 14 > bottom - 3 ? null : y2 + 14;
        const style = { face: "plain", colour: palette.wind, align: "center", halo: palette.paper } as const;
        write(
          c,
          palette,
          band.words,
          (x1 + x2) / 2,
          above ?? below ?? up.getPixelForValue(band.value) - 5,
          style,
        );
      }
    },
  };
}
