/** A flight as the finder sees it where short silences hide the passes of a fix: turned through in them by the shorter way. */
import { turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";

/** A longer silence may hide more than half a turn, and which way it went is not known. Chosen: under 180 degrees at rate one, with room for wind. */
export const LONGEST_BRIDGED: Seconds = 50;
/** Where the track changes by less over a silence, it was flown straight on. Chosen: what a heading wanders. */
const STRAIGHT_ON: AngleSize = 10;

/** Runs and legs joined over every short silence; null where there is none. Rows are as they were, so what was found is measured on the log itself. */
export function bridged(
  motion: Motion,
  legs: readonly Leg[],
): { readonly motion: Motion; readonly legs: readonly Leg[] } | null {
  const { time, trackAngle } = motion;
  const short = (row: number) => (time[row]! - time[row - 1]!) / 1000 <= LONGEST_BRIDGED;
  const spans: Span[] = [];
  const begins = new Set<number>();
  for (const span of motion.spans) {
    const last = spans.at(-1);
    if (!last || last.end !== span.start || !short(span.start)) spans.push(span);
    else {
      spans[spans.length - 1] = { start: last.start, end: span.end };
      begins.add(span.start);
    }
  }
  if (begins.size === 0) return null;
  const joined: Leg[] = [];
  for (const leg of legs) {
    const last = joined.at(-1);
    const row = leg.span.start;
    if (!last || !begins.has(row) || last.span.end !== row) {
      joined.push(leg);
      continue;
    }
    const hidden = turnFrom(trackAngle[row - 1]!, trackAngle[row]!);
    const straightOn = Math.abs(hidden) < STRAIGHT_ON;
    if (straightOn && leg.kind === last.kind && (leg.kind === "straight" || leg.turn * last.turn > 0)) {
      joined[joined.length - 1] = { ...last, ...over(last, leg, hidden) };
    } else if (straightOn) {
      joined.push(leg);
    } else if (leg.kind === "turn" && leg.turn * hidden > 0) {
      joined.push({ ...leg, span: { start: row - 1, end: leg.span.end }, turn: leg.turn + hidden });
    } else if (last.kind === "turn" && last.turn * hidden > 0) {
      joined[joined.length - 1] = {
        ...last,
        span: { start: last.span.start, end: row + 1 },
        turn: last.turn + hidden,
      };
      joined.push(leg);
    } else {
      joined.push({ ...leg, kind: "turn", span: { start: row - 1, end: row + 1 }, turn: hidden }, leg);
    }
  }
  return { motion: { ...motion, spans }, legs: joined };
}

const over = (first: Leg, second: Leg, hidden: number): Pick<Leg, "span" | "turn"> => ({
  span: { start: first.span.start, end: second.span.end },
  turn: first.turn + hidden + second.turn,
});
