/** Where the lines of a hold lie, in miles along and across the inbound course, and how large its plan must be. */
import type { HoldSeries } from "./contract.ts";
import { PX_PER_MM } from "./scale.ts";
import { rowsAfterSilence } from "./silences.ts";
import type { Point } from "./windGeometry.ts";

/** Miles along the inbound course (negative: before the fix) and right of it. */
export interface HoldLine {
  readonly alongNm: ArrayLike<number>;
  readonly crossTrackNm: ArrayLike<number>;
}

/** A flown one: `silent`, its rows at which a silence of the log ends. */
export interface FlownHoldLine extends HoldLine {
  readonly silent: ReadonlySet<number>;
}

export interface FlownLines {
  /** One a lap, each with the first row of the next so that the line goes on. */
  readonly laps: readonly FlownHoldLine[];
  /** The entry, and what was flown after the last pass. */
  readonly others: readonly FlownHoldLine[];
}

export function flownLines(series: HoldSeries): FlownLines {
  const laps: FlownHoldLine[] = [];
  const others: FlownHoldLine[] = [];
  const { lap, alongNm, crossTrackNm } = series;
  const silences = [...rowsAfterSilence(series.timeMs)];
  for (let start = 0; start < lap.length; ) {
    let end = start + 1;
    while (end < lap.length && lap[end] === lap[start]) end++;
    const line = {
      alongNm: alongNm.subarray(start, end + 1),
      crossTrackNm: crossTrackNm.subarray(start, end + 1),
      silent: new Set(silences.map((row) => row - start)),
    };
    (lap[start] < 0 ? others : laps).push(line);
    start = end;
  }
  return { laps, others };
}

export interface HoldFrame {
  readonly mmPerMile: number;
  readonly pxPerMile: number;
  readonly width: number;
  readonly height: number;
  /** Where the fix lies, px. */
  readonly fixX: number;
  readonly fixY: number;
  /** Farthest from the fix, NM: along (top positive) and across (right positive). */
  readonly topNm: number;
  readonly bottomNm: number;
  readonly leftNm: number;
  readonly rightNm: number;
}

/** Names stand on the side where nobody should fly: so much room for them, and a little beside what strayed there. */
const NAMES_PX = 112;
const STRAYED_PX = 26;
/** On the other side the north arrow, and a word beside the outbound leg. */
const HOLDING_PX = 54;
const TOP_PX = 26;
const FOOT_PX = 58;
const LEAST_WIDTH_PX = 300;
/** A taller plan is never seen whole, and has no room for words on a page. Own choice. */
const MOST_HEIGHT_PX = 860;
/** Where a hold is too large for the fixed scale, the next of these, mm for a mile. Own choice. */
const STEPS_MM = [20, 15, 10, 7.5, 5, 3, 2, 1, 0.5];

export function holdFrame(
  lines: readonly HoldLine[],
  given: {
    readonly turns: "left" | "right";
    readonly columnPx: number;
    readonly fixedMm: number;
    /** Least room above the fix, for the wind. */
    readonly abovePx: number;
  },
): HoldFrame {
  const { turns, columnPx, fixedMm, abovePx } = given;
  let [top, bottom, left, right] = [0.3, -0.3, 0, 0];
  for (const { alongNm, crossTrackNm } of lines) {
    for (let i = 0; i < alongNm.length; i++) {
      const [along, across] = [alongNm[i], crossTrackNm[i]];
      if (!Number.isFinite(along) || !Number.isFinite(across)) continue;
      top = Math.max(top, along);
      bottom = Math.min(bottom, along);
      left = Math.min(left, across);
      right = Math.max(right, across);
    }
  }
  const [holdingNm, strayedNm] = turns === "right" ? [right, -left] : [-left, right];
  const sizeAt = (mm: number) => {
    const px = mm * PX_PER_MM;
    const fixY = Math.max(TOP_PX + top * px, abovePx);
    return {
      px,
      fixY,
      names: Math.max(NAMES_PX, strayedNm * px + STRAYED_PX),
      holding: holdingNm * px + HOLDING_PX,
      height: Math.ceil(fixY - bottom * px + FOOT_PX),
    };
  };
  const fits = (mm: number) => {
    const { names, holding, height } = sizeAt(mm);
    return names + holding <= columnPx && height <= MOST_HEIGHT_PX;
  };
  const mmPerMile = [fixedMm, ...STEPS_MM.filter((mm) => mm < fixedMm)].find(fits) ?? STEPS_MM.at(-1)!;
  const size = sizeAt(mmPerMile);
  const needed = size.names + size.holding;
  const spare = Math.max(0, Math.min(LEAST_WIDTH_PX, columnPx) - needed);
  return {
    mmPerMile,
    pxPerMile: size.px,
    width: Math.ceil(needed + spare),
    height: size.height,
    fixX: turns === "right" ? size.names : size.holding + spare,
    fixY: size.fixY,
    topNm: top,
    bottomNm: bottom,
    leftNm: left,
    rightNm: right,
  };
}

/** Farthest point of a lap before the fix: where its number stands. */
export function farEnd({ alongNm, crossTrackNm }: HoldLine): readonly [along: number, across: number] {
  let far = 0;
  for (let i = 1; i < alongNm.length; i++) if (alongNm[i] < alongNm[far]) far = i;
  return [alongNm[far], crossTrackNm[far]];
}

/** Moves marks on one line apart to the right until no two are nearer than `least`; their order stays. */
export function apart(places: readonly number[], least: number): number[] {
  const order = places.map((_, i) => i).sort((a, b) => places[a] - places[b]);
  const moved = [...places];
  order.forEach((i, k) => {
    if (k > 0) moved[i] = Math.max(moved[i], moved[order[k - 1]] + least);
  });
  return moved;
}

/** The middle of the longest way down the page: where a lap's chevron shows the direction flown outbound. */
export function outboundMiddle({ alongNm, crossTrackNm }: HoldLine): {
  readonly at: readonly [along: number, across: number];
  readonly before: readonly [along: number, across: number];
} | null {
  let [best, start, length] = [0, 0, 0];
  for (let i = 1; i < alongNm.length; i++) {
    if (alongNm[i] < alongNm[i - 1]) continue;
    if (alongNm[start] - alongNm[i - 1] > length) [best, length] = [start, alongNm[start] - alongNm[i - 1]];
    start = i;
  }
  if (alongNm.length > 1 && alongNm[start] - alongNm[alongNm.length - 1] > length) {
    [best, length] = [start, alongNm[start] - alongNm[alongNm.length - 1]];
  }
  if (!(length > 0)) return null;
  let row = best + 1;
  while (row < alongNm.length - 1 && alongNm[best] - alongNm[row] < length / 2) row++;
  return { at: [alongNm[row], crossTrackNm[row]], before: [alongNm[row - 1], crossTrackNm[row - 1]] };
}

/** Course-up: along goes up the page, right goes right. */
export const placeIn =
  (frame: HoldFrame, view: { readonly zoom: number; readonly x: number; readonly y: number }) =>
  (along: number, across: number): Point => [
    (frame.fixX + across * frame.pxPerMile) * view.zoom + view.x,
    (frame.fixY - along * frame.pxPerMile) * view.zoom + view.y,
  ];

export const pointsOf = (
  { alongNm, crossTrackNm }: HoldLine,
  place: (along: number, across: number) => Point,
): Point[] => Array.from(alongNm, (along, i) => place(along, crossTrackNm[i]));
