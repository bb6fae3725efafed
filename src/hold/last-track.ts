/** On what track each inbound leg came to the fix: its last straight stretch, after any cut to a course. */
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { type HoldFrame, meanDirection, rowsBetween } from "./frame.ts";
import type { LapMoments } from "./lap.ts";

/** The track of the last seconds; before them the stretch goes on while the track stays as near, so long at most, and is none where it is shorter. Chosen: as the finder of holds has it, whose pilots wander by 2 degrees. */
const LAST: Seconds = 8;
const STRAIGHT: AngleSize = 5;
const LONGEST: Seconds = 90;
const SHORTEST: Seconds = 10;

/** Null where the fix was not reached, or by no straight stretch. */
export function lastTrack(frame: HoldFrame, { inboundTurn, end }: LapMoments): TrueDegrees | null {
  if (!inboundTurn || !end) return null;
  const to = end.time;
  const ends = meanDirection(frame, frame.track, Math.max(inboundTurn.to, to - LAST * 1000), to);
  if (ends === null) return null;
  const from: UtcMillis = Math.max(inboundTurn.to, to - LONGEST * 1000);
  const rows = rowsBetween(frame, from, to);
  let first = rows.end;
  while (first > rows.start && Math.abs(turnFrom(ends, frame.track[first - 1]!)) <= STRAIGHT) first--;
  if (first >= rows.end || to - frame.time[first]! < SHORTEST * 1000) return null;
  return meanDirection(frame, frame.track, frame.time[first]!, to);
}
