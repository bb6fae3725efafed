/** Where the winds by height stand on paper: bands up the page, direction and speed to the right of each other. */
import type { DebriefDocument } from "./contract.ts";
import { type FixedScales, PX_PER_KNOT, PX_PER_MM } from "./scale.ts";
import { TICK_DEG, type WindWindow, windWindow } from "./windChartLayout.ts";
import { type WindStroke, windStrokes } from "./windStrokes.ts";

export type WindBands = NonNullable<DebriefDocument["windByHeight"]>;

/** Under so much height with a known wind there is nothing to compare, ft. */
const LEAST_SPAN_FT = 1000;
/** Higher drawings are fitted to this, and say so, ft at the fixed scale. Own choice. */
const TALLEST_FT = 15000;
const FITTED_MM = 2.5;

export const shownByHeight = (bands: WindBands | undefined): bands is WindBands =>
  bands !== undefined &&
  bands.length > 1 &&
  bands[bands.length - 1].altitudeFt - bands[0].altitudeFt > LEAST_SPAN_FT;

export interface HeightMark extends WindStroke {
  readonly band: WindBands[number];
  /** Below the top of the plot, px. */
  readonly y: number;
}

export interface HeightLayout {
  readonly marks: readonly HeightMark[];
  readonly window: WindWindow;
  readonly fitted: boolean;
  readonly mmPerThousandFeet: number;
  readonly height: number;
  readonly directionWidth: number;
  readonly speedWidth: number;
  readonly ticks: readonly { readonly ft: number; readonly y: number }[];
}

/** All of it px; `bands` are those that `shownByHeight` takes. */
export function heightLayout(bands: WindBands, scales: FixedScales): HeightLayout {
  const [bottom, top] = [bands[0].lowFt, bands[bands.length - 1].highFt];
  const fitted = top - bottom > TALLEST_FT;
  const mmPerThousandFeet = fitted ? FITTED_MM : scales.mmPerThousandFeetOfWind;
  const y = (ft: number) => ((top - ft) / 1000) * mmPerThousandFeet * PX_PER_MM;
  const strokes = windStrokes(
    bands.map(({ wind, seconds }) => ({ wind, from: 0, to: seconds * 1000, turn: false })),
  );
  const window = windWindow(strokes);
  const shown = window.direction;
  const step = fitted ? 5000 : 1000;
  const ticks: { ft: number; y: number }[] = [];
  for (let ft = Math.ceil(bottom / step) * step; ft <= top; ft += step) ticks.push({ ft, y: y(ft) });
  return {
    marks: strokes.map((stroke, i) => ({
      ...stroke,
      band: bands[i],
      y: y((bands[i].lowFt + bands[i].highFt) / 2),
    })),
    window,
    fitted,
    mmPerThousandFeet,
    height: y(bottom),
    directionWidth: shown
      ? ((shown.max - shown.min) / TICK_DEG) * scales.mmPerThirtyDegreesOfWind * PX_PER_MM
      : 0,
    speedWidth: window.topKt * PX_PER_KNOT,
    ticks,
  };
}
