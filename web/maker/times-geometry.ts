/** The time axis of the whole flight, and the altitude above it. */
import type { PathSeries } from "../../src/index.ts";
import { rowsAfterSilence } from "../drawings/index.ts";

export const HEIGHT_PX = 150;
/** Above the altitude: the bars of the exercises. */
export const BARS_PX = 40;
export const FOOT_PX = 22;
const SIDE_PX = 10;

export interface TimeAxis {
  readonly start: number;
  readonly end: number;
  readonly width: number;
  readonly toPx: (ms: number) => number;
  /** Within the flight, to the whole second. */
  readonly toMs: (px: number) => number;
}

/** Null where the log has no times. */
export function timeAxis({ timeMs }: PathSeries, width: number): TimeAxis | null {
  const [start, end] = [timeMs[0], timeMs[timeMs.length - 1]];
  if (start === undefined || end === undefined || !Number.isFinite(start) || !(end > start)) return null;
  const room = width - 2 * SIDE_PX;
  return {
    start,
    end,
    width,
    toPx: (ms) => SIDE_PX + ((ms - start) / (end - start)) * room,
    toMs: (px) => {
      const ms = start + ((px - SIDE_PX) / room) * (end - start);
      return Math.round(Math.min(end, Math.max(start, ms)) / 1000) * 1000;
    },
  };
}

/** Steps that clock times are counted in, minutes. */
const STEPS_MIN = [1, 2, 5, 10, 20, 30, 60, 120, 180, 360, 720, 1440];
const LEAST_STEP_PX = 70;

/** Round clock times along the axis, not nearer to each other than their words are long. */
export function ticksOf({ start, end, toPx }: TimeAxis): number[] {
  const pxPerMinute = toPx(start + 60_000) - toPx(start);
  const step = (STEPS_MIN.find((minutes) => minutes * pxPerMinute >= LEAST_STEP_PX) ?? 1440) * 60_000;
  const ticks: number[] = [];
  for (let ms = Math.ceil(start / step) * step; ms <= end; ms += step) ticks.push(ms);
  return ticks;
}

/** A point every second pixel is more than the eye can follow. */
const PX_A_POINT = 2;

/** Less is the receiver's own wandering, and would look like climbs, ft. Chosen. */
const LEAST_RANGE_FT = 1000;

export interface AltitudeDrawn {
  readonly points: readonly (readonly [number, number])[];
  readonly lowFt: number;
  readonly highFt: number;
}

/** The altitude as points of the drawing, between whole hundreds of feet; null where the log has none. */
export function altitudeDrawn({ timeMs, altitudeFt }: PathSeries, axis: TimeAxis): AltitudeDrawn | null {
  let [low, high] = [Infinity, -Infinity];
  for (const feet of altitudeFt) {
    if (!Number.isFinite(feet)) continue;
    low = Math.min(low, feet);
    high = Math.max(high, feet);
  }
  if (!(high >= low)) return null;
  const spare = Math.max(0, LEAST_RANGE_FT - (high - low)) / 2;
  const lowFt = Math.floor((low - spare) / 100) * 100;
  const highFt = Math.ceil((high + spare) / 100) * 100;
  const room = HEIGHT_PX - BARS_PX - FOOT_PX;
  const every = Math.max(1, Math.floor((timeMs.length / axis.width) * PX_A_POINT));
  const points: (readonly [number, number])[] = [];
  // across a silence of the log nothing is drawn
  const silences = [...rowsAfterSilence(timeMs)];
  let [drawn, passed] = [0, 0];
  for (let i = 0; i < timeMs.length; i += every) {
    for (passed = drawn; silences[drawn]! <= i; drawn++);
    if (drawn > passed) points.push([axis.toPx(timeMs[i]!), Number.NaN]);
    const share = (altitudeFt[i]! - lowFt) / (highFt - lowFt);
    points.push([axis.toPx(timeMs[i]!), BARS_PX + room * (1 - share)]);
  }
  return { points, lowFt, highFt };
}

/** Runs of rows in which the aircraft turned, as pixels along the axis. */
export function turnsOf({ timeMs, turning }: PathSeries, axis: TimeAxis): (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  let from = -1;
  for (let i = 0; i <= turning.length; i++) {
    const turns = i < turning.length && turning[i] === 1;
    if (turns && from < 0) from = i;
    if (!turns && from >= 0) {
      runs.push([axis.toPx(timeMs[from]!), axis.toPx(timeMs[i - 1]!)]);
      from = -1;
    }
  }
  return runs;
}

/** As in 09:44:10. */
export const clockText = (ms: number): string => new Date(ms).toISOString().slice(11, 19);

const DAY_MS = 86_400_000;

/** A clock time of the brief on the axis; null where it is none, or not within the flight. */
export function msOfClock(text: string, { start, end }: TimeAxis): number | null {
  const [, h = "", m = "", s = "0"] = /^\s*(\d{1,2}):(\d{2})(?::(\d{2}))?\s*z?\s*$/i.exec(text) ?? [];
  if (h === "") return null;
  const clock = (Number(h) * 3600 + Number(m) * 60 + Number(s)) * 1000;
  const midnight = Math.floor(start / DAY_MS) * DAY_MS;
  const ms = [midnight + clock, midnight + clock + DAY_MS].find(
    (at) => at >= start - 60_000 && at <= end + 60_000,
  );
  return ms === undefined ? null : Math.min(end, Math.max(start, ms));
}
