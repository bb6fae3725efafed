/** Clock times of a brief: UTC without a date, which the flight supplies. */
import { DAY_MS } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";

/** Milliseconds since midnight of `09:44` or `09:44:30`. The text has passed the schema. */
function clockMillis(text: string): number {
  const match = /^\s*(\d{1,2}):(\d{2})(?::(\d{2}))?\s*z?\s*$/i.exec(text);
  if (!match) throw new RangeError(`invalid clock time: ${text}`);
  return (Number(match[1]) * 3600 + Number(match[2]) * 60 + Number(match[3] ?? 0)) * 1000;
}

/**
 * The window in UTC: its start on the day that brings it nearest to the flight's first time, its end the first
 * such clock time after the start. Valid for flights shorter than 12 hours.
 */
export function windowAt(
  between: { readonly start: string; readonly end: string },
  flightStart: UtcMillis,
): { start: UtcMillis; end: UtcMillis } {
  const sinceMidnight = ((flightStart % DAY_MS) + DAY_MS) % DAY_MS;
  const midnight = flightStart - sinceMidnight;
  const clock = clockMillis(between.start);
  const ahead = clock - sinceMidnight;
  const start = midnight + clock + (ahead > DAY_MS / 2 ? -DAY_MS : ahead < -DAY_MS / 2 ? DAY_MS : 0);
  return { start, end: start + windowMillis(between) };
}

/** How long a window is; one whose end is before its start runs over midnight. */
export const windowMillis = (between: { readonly start: string; readonly end: string }): number =>
  (clockMillis(between.end) - clockMillis(between.start) + DAY_MS) % DAY_MS;
