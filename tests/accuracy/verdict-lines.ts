/** The flights that verdicts are measured on, in parts that can be flown side by side. */
import {
  approachesAboutLimits,
  arcsAboutLimits,
  courseHeightsAboutLimits,
  descentsAboutLimits,
} from "../grade/about-limits.ts";
import { calibrate } from "../grade/calibration.ts";
import { calibrateHolds } from "../grade/calibration-holds.ts";
import { calibrateApproaches, calibrateArcsAndDescents } from "../grade/calibration-others.ts";
import { joined, type Tallies } from "../grade/tally.ts";

/** Never used for tuning. */
export const FIRST_SEED = 700_000;

/** What flies a number of flights from a seed on, and how many of them make an exercise of each of its criteria. */
type Line = readonly [fly: (first: number, flights: number) => Tallies, flightsAnExercise: number];

const ABOUT_LIMITS: readonly Line[] = [
  [courseHeightsAboutLimits, 1 / 4], // four courses a flight
  [arcsAboutLimits, 1],
  [descentsAboutLimits, 1],
  [approachesAboutLimits, 2], // steep ones have rates, the others a glide path
];
const LIMITS_DRAWN: readonly Line[] = [
  [(first, flights) => calibrate(first, flights).tallies, 1 / 4],
  [calibrateHolds, 1],
  [calibrateArcsAndDescents, 2],
  [calibrateApproaches, 1],
];

export interface VerdictLines {
  /** Flown so that the truth is about the published limit. */
  readonly aboutLimits: Tallies;
  /** Flown as they come, the limit drawn about the truth. */
  readonly limitsDrawn: Tallies;
}

/** Part `part` of `parts` of so many exercises a criterion, on seeds of its own. */
export function flyPart(
  exercises: number,
  part: number,
  parts: number,
  told: (line: string) => void = () => {},
): VerdictLines {
  const all = (lines: readonly Line[]): Tallies =>
    joined(
      lines.map(([fly, each], i) => {
        const flights = Math.ceil((exercises * each) / parts);
        const tallies = fly(FIRST_SEED + part * flights, flights);
        told(`part ${part + 1} of ${parts}: ${i + 1} of ${lines.length} lines flown`);
        return tallies;
      }),
    );
  return { aboutLimits: all(ABOUT_LIMITS), limitsDrawn: all(LIMITS_DRAWN) };
}

export const joinedLines = (parts: readonly VerdictLines[]): VerdictLines => ({
  aboutLimits: joined(parts.map((p) => p.aboutLimits)),
  limitsDrawn: joined(parts.map((p) => p.limitsDrawn)),
});
