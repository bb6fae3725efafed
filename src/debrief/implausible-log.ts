/** What a log says that cannot well be true as a whole: no single point shows it, and every number rests on it. */
import type { ImportedLog } from "../import/imported.ts";
import type { Issue } from "../quantity/issue.ts";
import type { Knots, Share } from "../quantity/units.ts";
import { airborneRows, type CleanedTrack } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";

/** Faster over the ground than an airliner in the strongest of jet streams. Common practice, no source. */
export const FASTEST: Knots = 750;
/** Where more of the points than this cannot be true, the rest is hardly a flight. Own choice. */
const MOST_LEFT_OUT: Share = 0.5;
/** Points left out for these are faults of the log; others, as standing on the ground, are none. */
const FAULTS = ["time-going-back", "impossible-jump", "out-of-range", "zero-zero", "point-without-time"];

const middleOf = (sorted: ArrayLike<number>): number => sorted[sorted.length >> 1] ?? Number.NaN;

/** Of the flown part of the flight: the middle of its ground speeds. */
export function usualSpeed(motion: Motion): Knots {
  const flown = airborneRows(motion);
  return middleOf(motion.groundSpeed.filter((v, k) => flown[k] === 1 && !Number.isNaN(v)).sort());
}

export function implausibleLog(log: ImportedLog, cleaned: CleanedTrack, motion: Motion | null): Issue[] {
  const issues: Issue[] = [];
  const say = (code: string, facts: Issue["facts"]) =>
    issues.push({ code, severity: "warning", where: { file: log.file }, facts });
  const lost = FAULTS.map((code) => cleaned.dropped[code] ?? 0);
  const count = lost.reduce((a, b) => a + b, 0);
  if (count > MOST_LEFT_OUT * log.pointsSeen) {
    const backwards = cleaned.dropped["time-going-back"] ?? 0;
    say("log-mostly-left-out", { count, points: log.pointsSeen, backwards });
  }
  if (!motion) return issues;
  const speed = usualSpeed(motion);
  if (speed > FASTEST) say("log-too-fast", { groundSpeedKt: Math.round(speed), mostKt: FASTEST });
  return issues;
}
