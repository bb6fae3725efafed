/** Whether the log begins or ends in flight in the hold itself: what it does not show of it. */
import { measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Share, UtcMillis } from "../quantity/units.ts";
import { airborneRows } from "../track/index.ts";
import type { HoldFacts } from "./facts.ts";
import { directionAt, type HoldFrame, offInbound, rowsBetween } from "./frame.ts";
import type { LapMoments } from "./lap.ts";
import type { Pass } from "./pass.ts";

/** Laps of one hold differ by so much in length and reach. Chosen: the first may be flown in another wind, and half as long again; and reach farther by a quarter of the way out. */
const MORE: Share = 1.5;
const FARTHER: Share = 0.25;
/** Who comes to the fix within this of the inbound course may come by a lap. Chosen: a cut of 45 degrees and its wind. */
const LIKE_A_LAP: AngleSize = 60;
/** Turned so far to the side of the hold and not come to the fix, a lap was begun. Chosen: half of its first turn. */
const LAP_BEGUN: AngleSize = 90;
/** Turned a lap and so far again, it was a whole one, and is told if it was one of this hold. */
const LAP: AngleSize = 360 + LAP_BEGUN;

/** What an aircraft holding there does not go beyond: in time, and in NM along the inbound course and across it. */
interface Reach {
  readonly time: number;
  readonly along: Between;
  readonly across: Between;
}
type Between = readonly [least: NauticalMiles, most: NauticalMiles];

function reachOf(frame: HoldFrame, laps: readonly LapMoments[]): Reach | null {
  const times = laps.flatMap(({ start, end }) => (end ? [end.time - start.time] : []));
  const [from, to] = [laps[0]?.start.time, laps.at(-1)?.end?.time];
  if (times.length === 0 || from === undefined || to === undefined) return null;
  const { start, end } = rowsBetween(frame, from, to);
  const [along, across] = [frame.along.subarray(start, end), frame.across.subarray(start, end)];
  const farther = FARTHER * along.reduce((most, a, i) => Math.max(most, Math.hypot(a, across[i]!)), 0);
  const about = (column: Float64Array): Between => [
    column.reduce((a, b) => Math.min(a, b), 0) - farther,
    column.reduce((a, b) => Math.max(a, b), 0) + farther,
  ];
  return { time: MORE * Math.max(...times), along: about(along), across: about(across) };
}

/** Whether some rows of the flight all lie where a lap does, and how far they turn to the side of the hold. */
function within({ motion, course, side }: HoldFrame, from: number, to: number, reach: Reach) {
  const { latitude, longitude, trackAngle } = motion;
  const line = measureColumns(course, latitude.subarray(from, to), longitude.subarray(from, to));
  const inside = (metres: number, [least, most]: Between) =>
    nauticalMilesFromMetres(metres) >= least && nauticalMilesFromMetres(metres) <= most;
  let turned: AngleSize = 0;
  for (let row = from; row < to; row++) {
    if (!inside(line.along[row - from]!, reach.along)) return null;
    if (!inside(line.across[row - from]!, reach.across)) return null;
    if (row > from) turned += side * turnFrom(trackAngle[row - 1]!, trackAngle[row]!);
  }
  return { turned };
}

const inOneLap = ({ turned }: { readonly turned: AngleSize }) => turned >= LAP_BEGUN && turned < LAP;

/**
 * A log that begins in flight within a lap before the fix was first passed, and no farther from it than laps go: what
 * seems an arrival may be the end of a lap that nobody saw begin. `lap`: it turned as one does. Null where it begins
 * elsewhere.
 */
export function logBeginsIn(
  frame: HoldFrame,
  laps: readonly LapMoments[],
  pass: Pass,
): { readonly lap: boolean } | null {
  const { motion } = frame;
  const reach = reachOf(frame, laps);
  if (!reach || pass.time - motion.time[0]! > reach.time || airborneRows(motion)[0] !== 1) return null;
  if (Math.abs(offInbound(frame, directionAt(frame, frame.track, pass.time))) > LIKE_A_LAP) return null;
  const seen = within(frame, 0, firstAtOrAfter(motion.time, pass.time), reach);
  return seen && { lap: inOneLap(seen) };
}

/** The laps that the log begins and ends in, in flight: seen from the first point to the fix, and from the fix to the last point. */
export function lapsCut(
  frame: HoldFrame,
  laps: readonly LapMoments[],
  reached: Pass,
): NonNullable<HoldFacts["lapCut"]> {
  const first = frame.motion.time[0]!;
  const begun = logBeginsIn(frame, laps, reached)?.lap === true;
  return {
    before: begun ? { fromUtc: utcText(first), toUtc: utcText(reached.time) } : null,
    after: lapEnding(frame, laps),
  };
}

function lapEnding(frame: HoldFrame, laps: readonly LapMoments[]) {
  const { motion } = frame;
  const reach = reachOf(frame, laps);
  const pass: UtcMillis | undefined = laps.at(-1)?.end?.time;
  const last = motion.time[motion.length - 1]!;
  if (!reach || pass === undefined || last - pass > reach.time) return null;
  if (airborneRows(motion)[motion.length - 1] !== 1) return null;
  const seen = within(frame, firstAtOrAfter(motion.time, pass), motion.length, reach);
  return seen && inOneLap(seen) ? { fromUtc: utcText(pass), toUtc: utcText(last) } : null;
}
