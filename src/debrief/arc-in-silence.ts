/** Whether an arc that was not found may have been flown where the log is silent: in one silence with time to come to it, round it, and on. */
import type { ArcExercise } from "../brief/brief.ts";
import { destination, inverse } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { direction } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import type { NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** The way may be so much shorter or faster than it seems: corners are cut, and the wind is another on the arc. Chosen: 20 kt of wind at 100 kt. */
const ROOM: Share = 0.8;

/** The finding, with the longest such silence; null where none has room for it. */
export function arcInSilence(arc: ArcExercise, motion: Motion): Finding | null {
  const { time } = motion;
  const { fix, radius, fromRadial, toRadial, turns, between } = arc;
  const at = (radial: number): Position => destination(fix, radial, radius * METRES_PER_NAUTICAL_MILE);
  const round = direction(turns === "right" ? toRadial - fromRadial : fromRadial - toRadial);
  const [first, last, length] = [at(fromRadial), at(toRadial), (round / DEGREES_PER_RADIAN) * radius];
  const placed = (row: number) => ({ latitude: motion.latitude[row]!, longitude: motion.longitude[row]! });
  const miles = (a: Position, b: Position): NauticalMiles =>
    inverse(a, b).distance / METRES_PER_NAUTICAL_MILE;
  const silent = (row: number): Seconds => (time[row]! - time[row - 1]!) / 1000;
  const hasRoom = (row: number): boolean => {
    if (between && (time[row]! < between.start || time[row - 1]! > between.end)) return false;
    const knots = (motion.groundSpeed[row - 1]! + motion.groundSpeed[row]!) / 2;
    const way = miles(placed(row - 1), first) + length + miles(last, placed(row));
    return ROOM * way <= (knots * silent(row)) / 3600;
  };
  const silences = motion.spans.slice(1).flatMap(({ start }) => (hasRoom(start) ? [start] : []));
  const [longest] = silences.sort((a, b) => silent(b) - silent(a));
  if (longest === undefined) return null;
  const evidence = { fromUtc: utcText(time[longest - 1]!), toUtc: utcText(time[longest]!) };
  return { code: "log-silent-there", facts: { seconds: silent(longest), times: 1 }, evidence };
}
