/** The winds of the legs as strokes over time: direction unwrapped about one middle, speed, or the part along the track. */
import { windReach } from "../../src/index.ts";
import type { DocumentLeg } from "./contract.ts";

/** `light`: fully known, but its doubt holds calm, so that it has no direction. */
export type Known = "full" | "light" | "along" | "none";

/** A value over a leg, with the bounds of its 95 % doubt. */
export interface Level {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface WindStroke {
  readonly from: number;
  readonly to: number;
  readonly known: Known;
  readonly turn: boolean;
  /** Where the wind comes from, true degrees; within 180 of the middle of the chart, so it may leave 0 to 360. */
  readonly direction: Level | null;
  /** Speed, kt. */
  readonly speed: Level | null;
  /** The part along the track, kt without a sense, cut at calm, and whether it comes from behind. */
  readonly along: (Level & { readonly behind: boolean }) | null;
}

const wrap = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;

export function windStrokes(legs: readonly DocumentLeg[]): WindStroke[] {
  const middle = middleDirection(legs);
  return legs.map((leg) => {
    const { wind } = leg;
    const reach = windReach(wind);
    const d = reach?.direction ?? null;
    const shift = d === null ? 0 : middle + wrap(d.from - middle) - d.from;
    const direction = d && { value: d.from + shift, low: d.low + shift, high: d.high + shift };
    const speed = reach && { value: reach.speed.kt, low: reach.speed.low, high: reach.speed.high };
    const along =
      wind.knowledge === "along" && wind.alongKt !== null ? alongLevel(wind.alongKt, wind.along95Kt) : null;
    const known = reach ? (direction ? "full" : "light") : along ? "along" : "none";
    return {
      from: Date.parse(leg.startUtc),
      to: Date.parse(leg.endUtc),
      known,
      turn: leg.kind === "turn",
      direction,
      speed,
      along,
    };
  });
}

function alongLevel(alongKt: number, doubt: number | null): Level & { behind: boolean } {
  const value = Math.abs(alongKt);
  const half = doubt ?? 0;
  return { value, low: Math.max(0, value - half), high: value + half, behind: alongKt >= 0 };
}

/** The mean of the directions as unit vectors, each for as long as it was flown, degrees; 0 where there is none. */
function middleDirection(legs: readonly DocumentLeg[]): number {
  let east = 0;
  let north = 0;
  for (const { wind, startUtc, endUtc } of legs) {
    const from = windReach(wind)?.direction?.from;
    if (from === undefined) continue;
    const ms = Date.parse(endUtc) - Date.parse(startUtc);
    east += ms * Math.sin((from * Math.PI) / 180);
    north += ms * Math.cos((from * Math.PI) / 180);
  }
  return (Math.atan2(east, north) * 180) / Math.PI;
}

/** Neighbouring strokes of the same knowledge, one of those wanted, as spans. */
export function runs(
  strokes: readonly WindStroke[],
  wanted: (known: Known) => boolean,
): { readonly from: number; readonly to: number; readonly known: Known }[] {
  const found: { from: number; to: number; known: Known }[] = [];
  strokes.forEach(({ from, to, known }, i) => {
    if (!wanted(known)) return;
    const last = found.at(-1);
    if (last && i > 0 && strokes[i - 1].known === known) last.to = to;
    else found.push({ from, to, known });
  });
  return found;
}
