/** Rows of turns parted where the legs go on in another direction: from there on another hold is flown. */
import { inverse } from "../geodesy/index.ts";
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, TrueDegrees } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { TurnsInARow } from "./turns-in-a-row.ts";

/** Legs one lap apart that differ by no more are those of one hold. Chosen: wind and the cut to a course take no more of a leg. */
const ALIKE: AngleSize = 35;
/** ... and the legs of two holds differ by more, both ways. Chosen: the room that a brief's course has. */
const OTHER: AngleSize = 40;
/** So many legs, each with the one a lap before, make a hold's: two laps. */
const LAPS = 4;

/** Legs in a row that go to and fro in the same two directions: the first of them, and after the last. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** The rows that are left of one. */
export function partedByCourse(motion: Motion, row: TurnsInARow): TurnsInARow[] {
  const { arms } = row;
  const tracks = arms.map((arm) => madeGood(motion, arm));
  const stretches = steady(tracks).filter(({ start, end }) => end - start >= LAPS);
  for (const [i, next] of stretches.entries()) {
    const last = stretches[i - 1];
    if (!last || !otherWays(tracks, last, next)) continue;
    const first = { ...row, arms: arms.slice(0, last.end) };
    const rest = { ...row, arms: arms.slice(Math.max(last.end, next.start) - 1) };
    return [first, ...partedByCourse(motion, rest)];
  }
  return [row];
}

/** The first arm leads to the row: it is none of the legs. */
function steady(tracks: readonly TrueDegrees[]): Stretch[] {
  const stretches: Stretch[] = [];
  let start = 1;
  for (let i = 3; i <= tracks.length; i++) {
    const alike = i < tracks.length && Math.abs(turnFrom(tracks[i - 2]!, tracks[i]!)) <= ALIKE;
    if (alike) continue;
    stretches.push({ start, end: i });
    start = i - 1;
  }
  return stretches;
}

/** Whether the legs of both lead in other directions, those one way and those the other. */
function otherWays(tracks: readonly TrueDegrees[], one: Stretch, other: Stretch): boolean {
  const mean = ({ start, end }: Stretch, parity: number) => {
    const own = tracks.filter((_, i) => i >= start && i < end && i % 2 === parity);
    return directionOf(
      own.reduce((sum, t) => sum + sinDeg(t), 0),
      own.reduce((sum, t) => sum + cosDeg(t), 0),
    );
  };
  return [0, 1].every((parity) => Math.abs(turnFrom(mean(one, parity), mean(other, parity))) > OTHER);
}

function madeGood({ latitude, longitude, length }: Motion, { start, end }: Span): TrueDegrees {
  const at = (row: number) => ({ latitude: latitude[row]!, longitude: longitude[row]! });
  return inverse(at(start), at(Math.min(end, length - 1))).azimuthAtStart;
}
