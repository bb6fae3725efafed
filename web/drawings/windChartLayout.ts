/** How much a wind chart shows and how large it is, px: the scales are fixed, the window follows the wind. */
import { MINUTE_MS, margins } from "./courseLayout.ts";
import { type FixedScales, PX_PER_KNOT, PX_PER_MM } from "./scale.ts";
import type { Palette } from "./surroundings.ts";
import type { WindStroke } from "./windStrokes.ts";

export const TICK_DEG = 30;
export const TICK_KT = 10;
export const TEN_MINUTES_MS = 10 * MINUTE_MS;
/** A chart shows at least this much, degrees and kt, so that steady and light winds look so. Own choice. */
const LEAST_DEG = 60;
const LEAST_KT = 20;
/** Room for the titles, px. */
const TITLE_PX = 28;
const GAP_PX = 42;

export interface WindWindow {
  /** Null where no leg has a direction. */
  readonly direction: { readonly min: number; readonly max: number } | null;
  /** Speed goes from 0 to this, kt. */
  readonly topKt: number;
}

/** What holds all strokes with their doubt, in whole ticks; never more than once round. */
export function windWindow(strokes: readonly WindStroke[]): WindWindow {
  let [low, high, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, LEAST_KT];
  for (const { direction, speed, along } of strokes) {
    top = Math.max(top, speed?.high ?? 0, along?.high ?? 0);
    if (!direction) continue;
    low = Math.min(low, direction.low);
    high = Math.max(high, direction.high);
  }
  const topKt = Math.ceil(top / TICK_KT) * TICK_KT;
  if (high < low) return { direction: null, topKt };
  const middle = (low + high) / 2;
  if (high - low > 360) [low, high] = [middle - 180, middle + 180];
  let min = Math.floor(low / TICK_DEG) * TICK_DEG;
  let max = Math.min(min + 360, Math.ceil(high / TICK_DEG) * TICK_DEG);
  // the side with less room gets the next tick
  while (max - min < LEAST_DEG) {
    if (low - min < max - high) min -= TICK_DEG;
    else max += TICK_DEG;
  }
  return { direction: { min, max }, topKt };
}

export interface WindRow {
  readonly strokes: readonly WindStroke[];
  readonly window: WindWindow;
  readonly from: number;
  readonly to: number;
  readonly pxPerMs: number;
  readonly scales: FixedScales;
  readonly narrow: boolean;
  readonly continued: boolean;
  readonly palette: Palette;
  readonly devicePixelRatio: number;
}

export function windRowSize(row: Pick<WindRow, "window" | "from" | "to" | "pxPerMs" | "scales" | "narrow">) {
  const m = margins(row.narrow);
  const { direction: shown, topKt } = row.window;
  const plot = (row.to - row.from) * row.pxPerMs;
  const direction = shown
    ? ((shown.max - shown.min) / TICK_DEG) * row.scales.mmPerThirtyDegreesOfWind * PX_PER_MM
    : 0;
  const gap = shown ? GAP_PX : 0;
  const speed = topKt * PX_PER_KNOT;
  // whole pixels, or Chart.js would round and the scale with it; a short last row keeps room for its title
  const width = Math.ceil(Math.max(m.left + plot + m.right, row.narrow ? 300 : 430));
  const height = Math.ceil(TITLE_PX + direction + gap + speed + m.bottom);
  return { top: TITLE_PX, left: m.left, bottom: m.bottom, plot, direction, gap, speed, width, height };
}
