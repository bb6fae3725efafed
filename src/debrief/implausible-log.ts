/** What a log says that cannot well be true as a whole: no single point shows it, and every number rests on it. */
import type { Brief } from "../brief/brief.ts";
import type { ImportedLog } from "../import/imported.ts";
import { METRES_PER_FOOT } from "../quantity/factor.ts";
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
/** Heights this near to those of the brief times 3.28, or over it, were written in the other unit. Own choice. */
const UNIT_FITS: Share = 0.08;

const middleOf = (sorted: ArrayLike<number>): number => sorted[sorted.length >> 1] ?? Number.NaN;

/** Of the flown part of the flight: the middle of a column, those of no value left out. */
export function usual(motion: Motion, column: "groundSpeed" | "altitude"): number {
  const flown = airborneRows(motion);
  return middleOf(motion[column].filter((v, k) => flown[k] === 1 && !Number.isNaN(v)).sort());
}

export function implausibleLog(
  log: ImportedLog,
  cleaned: CleanedTrack,
  motion: Motion | null,
  brief: Brief | null,
): Issue[] {
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
  const speed = usual(motion, "groundSpeed");
  if (speed > FASTEST) say("log-too-fast", { groundSpeedKt: Math.round(speed), mostKt: FASTEST });
  const asked = (brief?.exercises ?? []).flatMap(({ altitude }) => altitude ?? []).sort((a, b) => a - b);
  const [flownFt, briefFt] = [usual(motion, "altitude"), middleOf(asked)];
  const fits = (ratio: number) => Math.abs(ratio - 1) < UNIT_FITS;
  const [high, low] = [
    fits((flownFt / briefFt) * METRES_PER_FOOT),
    fits(flownFt / briefFt / METRES_PER_FOOT),
  ];
  if (high || low) say("log-height-unit", { flownFt, briefFt, high });
  return issues;
}
