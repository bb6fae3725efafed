/** Where the exercises of a habit stand on its panel: flights in order across, tolerances up and down, always the same. */
import type { Habit } from "../../src/index.ts";
import { pathThrough } from "./path.ts";
import { PX_PER_MM } from "./scale.ts";

export const PANEL = { width: 262, height: 142, left: 62, right: 232, meanX: 246, middle: 62, axis: 119 };
/** The panel ends at so many tolerances, 14.3 mm from the middle. */
export const MOST = 2;
const PX_PER_TOLERANCE = (14.3 * PX_PER_MM) / MOST;
const INSET = 4;

/** Right of course lies below the line, as in every drawing; so does too little of a correction. */
const liesBelow = ({ id, unit }: Habit): boolean => id.endsWith("-side") || unit === "part";

export interface PanelScale {
  /** Of a flight by its index. */
  readonly x: (flight: number) => number;
  /** Of a value in tolerances, kept on the panel. */
  readonly y: (value: number) => number;
  /** 1: values above 0 stand above the line. */
  readonly up: 1 | -1;
}

export function panelScale(habit: Habit, flights: number): PanelScale {
  const up = liesBelow(habit) ? -1 : 1;
  const span = PANEL.right - PANEL.left - 2 * INSET;
  return {
    up,
    x: (flight) => PANEL.left + INSET + (flights > 1 ? (flight / (flights - 1)) * span : span / 2),
    y: (value) => PANEL.middle - up * Math.max(-MOST, Math.min(MOST, value)) * PX_PER_TOLERANCE,
  };
}

/** A dot as two half circles, so that all dots are one path. */
const dot = (x: number, y: number, r: number): string =>
  `M${(x - r).toFixed(1)} ${y.toFixed(1)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;

/** A value past the end of the panel: a small arrow that points there. */
const arrow = (x: number, y: number, away: number): string =>
  `M${(x - 3).toFixed(1)} ${(y + away * 4).toFixed(1)}l3 ${-away * 4}l3 ${away * 4}z`;

const DOT = 2.1;

/** All exercises of a habit: dots, their doubts, and those past the end. */
export function panelPaths({ points }: Habit, { x, y, up }: PanelScale) {
  let [dots, whiskers, past] = ["", "", ""];
  for (const { flight, value, doubt95 } of points) {
    const at = x(flight);
    if (Math.abs(value) > MOST) {
      past += arrow(at, y(value), up * Math.sign(value));
      continue;
    }
    dots += dot(at, y(value), DOT);
    if (doubt95 > 0)
      whiskers += pathThrough([
        [at, y(value - doubt95)],
        [at, y(value + doubt95)],
      ]);
  }
  return { dots, whiskers, past };
}

/** Ticks under the flights: the first, and round numbers. */
export function flightTicks(flights: number): number[] {
  const step =
    [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000].find((s) => flights / s <= 4) ?? flights;
  const ticks = [1];
  for (let n = step; n <= flights; n += step) if (n > 1 && (n - 1) / flights > 0.12) ticks.push(n);
  return ticks;
}
