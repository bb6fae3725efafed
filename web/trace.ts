/** A log boiled down to where it was and when, so that many are compared without being held in memory. */
import type { ImportedLog } from "../src/index.ts";
import type { LogTrace } from "./several.ts";

const MINUTE_MS = 60_000;

/** Null where the log has no times. */
export function traceOf({ track }: ImportedLog): LogTrace | null {
  const minutes = new Map<number, readonly [number, number]>();
  let startMs = Number.POSITIVE_INFINITY;
  let endMs = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < track.length; i++) {
    const time = track.time[i]!;
    if (Number.isNaN(time)) continue;
    startMs = Math.min(startMs, time);
    endMs = Math.max(endMs, time);
    const minute = Math.floor(time / MINUTE_MS);
    if (!minutes.has(minute)) minutes.set(minute, [track.latitude[i]!, track.longitude[i]!]);
  }
  return minutes.size > 0 ? { startMs, endMs, minutes } : null;
}
