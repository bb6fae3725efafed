/** Times as UTC text. */
import type { UtcMillis } from "./units.ts";

export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;

/** ISO 8601 text with milliseconds only where there are some, as in 2026-10-17T09:44:10Z. */
export function utcText(time: UtcMillis): string {
  return new Date(Math.round(time)).toISOString().replace(".000Z", "Z");
}
