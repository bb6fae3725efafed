/** The rows of a match with those flown before it, in which the cut onto its line may lie. */
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { Seconds } from "../quantity/units.ts";
import type { Motion } from "./motion.ts";

/** The cut may lie before what was matched, by so much. Chosen: a cut and its turn take less. */
const LOOK_BACK: Seconds = 180;

/** As far back as the log goes without a break, and no farther than a cut takes. */
export function withCut({ time, spans }: Motion, match: Span): Span {
  const flown = spans.find(({ start, end }) => start <= match.start && match.start < end);
  if (!flown) return match;
  const start = firstAtOrAfter(time, time[match.start]! - LOOK_BACK * 1000, flown.start, match.start);
  return { start, end: match.end };
}
