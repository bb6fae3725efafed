/** How long the legs of a hold are, as a pilot writes it. */
import type { BriefedHoldLeg } from "./brief.ts";

/** `1 min`, `90 s`, `4 NM`. */
export const HOLD_LEG_PATTERN = /^\s*[0-9]+(\.[0-9]+)?\s*(s|min|NM|nm)\s*$/;

/** Reads `1 min`, `90 s`, `4 NM`. The text has passed the pattern. */
export function readHoldLeg(text: string): BriefedHoldLeg {
  const amount = Number.parseFloat(text);
  if (/nm\s*$/i.test(text)) return { by: "distance", distance: amount };
  return { by: "time", seconds: /min\s*$/.test(text) ? amount * 60 : amount };
}
