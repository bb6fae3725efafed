/** A limit drawn as a coast: a line with short hachures on the side where one should not be. */
import type { Plugin } from "chart.js";
import type { Palette } from "../surroundings.ts";
import { segment, stroke, write } from "./pen.ts";

/** Own choices of the look, px: a hachure every 6, 5 long, leaning 1.5. */
const EVERY = 6;
const LONG = 5;
const LEAN = 1.5;

/** Hachures of a level coast from x1 to x2, as [x, y, x, y]; `far` is 1 where the far side is below (y down), else -1. */
export function hachures(x1: number, x2: number, y: number, far: 1 | -1): [number, number, number, number][] {
  const all: [number, number, number, number][] = [];
  for (let x = x1 + EVERY / 2; x < x2; x += EVERY) all.push([x, y, x - LEAN, y + far * LONG]);
  return all;
}

export interface CoastOptions {
  /** The scale that carries the limit. */
  readonly axis: string;
  /** Where the limit lies: at plus and minus this value. */
  readonly limit: number;
  readonly label: string;
  readonly palette: Palette;
  /** Whether the label stands beyond the frame on the right; else inside it. */
  readonly labelOutside: boolean;
}

export function coast({ axis, limit, label, palette, labelOutside }: CoastOptions): Plugin<"line"> {
  return {
    id: "coast",
    beforeDatasetsDraw(chart) {
      const c = chart.ctx;
      const { left, right } = chart.chartArea;
      const scale = chart.scales[axis];
      for (const value of [-limit, limit]) {
        const y = scale.getPixelForValue(value);
        // Right of course, the positive side, lies below.
        const far = y > scale.getPixelForValue(0) ? 1 : -1;
        segment(c, { colour: palette.ink, width: 1.2 }, left, y, right, y);
        stroke(c, { colour: palette.ink, width: 0.8 }, () => {
          for (const [xa, ya, xb, yb] of hachures(left, right, y, far)) {
            c.moveTo(xa, ya);
            c.lineTo(xb, yb);
          }
        });
      }
    },
    // After the veil, so that the words stay readable over what is not judged.
    afterDraw(chart) {
      const { left, right } = chart.chartArea;
      const scale = chart.scales[axis];
      for (const value of [-limit, limit]) {
        const y = scale.getPixelForValue(value);
        const style = { face: "italic", colour: palette["ink-2"] } as const;
        if (labelOutside) write(chart.ctx, palette, label, right + 6, y + 4, style);
        else
          write(chart.ctx, palette, label, left + 4, value < 0 ? y + 13 : y - 5, {
            ...style,
            halo: palette.paper,
          });
      }
    },
  };
}
