/** Why an exercise may have been flown though this log does not show it: the log begins or ends in flight, or much of it was left out. */
import type { Exercise } from "../brief/brief.ts";
import type { Match } from "../match/index.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import type { Share } from "../quantity/units.ts";
import { airborneRows } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";

/** Of so much left out, it cannot be told any more what was flown. Chosen: a fifth of a lesson is an exercise. */
const MUCH: Share = 0.2;

/** Points that are left out and take nothing of the flight with them. */
const HARMLESS = new Set(["duplicate-time", "ground-noise", "frozen-position", "other-flights"]);

/** How much of the points of a log was left out. */
export interface LeftOut {
  readonly points: number;
  readonly leftOut: number;
}

export function leftOutOf(points: number, dropped: Readonly<Record<string, number>>): LeftOut {
  const counts = Object.entries(dropped).filter(([code]) => !HARMLESS.has(code));
  return { points, leftOut: counts.reduce((sum, [, n]) => sum + n, 0) };
}

/** As a finding of an exercise that was not found; null where the log would show it, had it been flown. */
export function notSeen(
  index: number,
  exercises: readonly Exercise[],
  matches: readonly Match[],
  motion: Motion | null,
  { points, leftOut }: LeftOut,
): Finding | null {
  if (leftOut > MUCH * points) {
    const facts = { points, leftOut };
    return { code: "points-left-out", facts, evidence: { fromUtc: null, toUtc: null } };
  }
  if (!motion) return null;
  const [first, last] = [motion.time[0]!, motion.time[motion.length - 1]!];
  const ends: Finding = {
    code: "log-ends",
    facts: {},
    evidence: { fromUtc: utcText(last), toUtc: utcText(last) },
  };
  const begins: Finding = {
    code: "log-begins",
    facts: {},
    evidence: { fromUtc: utcText(first), toUtc: utcText(first) },
  };
  const flying = airborneRows(motion);
  const { between } = exercises[index]!;
  const endsFlying = flying[motion.length - 1] === 1;
  const beginsFlying = flying[0] === 1;
  if (between) {
    if (between.start >= last && endsFlying) return ends;
    return between.end <= first && beginsFlying ? begins : null;
  }
  // where nothing of the brief was found, it may be another flight's
  const found = (part: readonly Match[]) => part.some(({ span }) => span !== null);
  const [before, after] = [found(matches.slice(0, index)), found(matches.slice(index + 1))];
  if (before && !after && endsFlying) return ends;
  return after && !before && beginsFlying ? begins : null;
}
