/** What may come back on final approaches: the side, the path, the intercept, the chase. */
import type { ApproachFacts, ApproachRecord } from "../debrief/document.ts";
import { CHASED } from "../standard/tracking.ts";
import { chasedPerMinute } from "./chasing.ts";
import { limitOf } from "./limit.ts";
import { type Measured, shownAt, type Tendency, tendency } from "./tendency.ts";

const needleLimit = limitOf("approach-needle");

type Facts = (facts: ApproachFacts) => Measured | null;

const approach = (
  id: string,
  unit: Tendency["unit"],
  tolerance: Tendency<ApproachRecord>["tolerance"],
  measure: Facts,
  oneSided = false,
): Tendency =>
  tendency("approach", {
    ...{ id, unit, oneSided },
    tolerance,
    measure: ({ source, facts }: ApproachRecord) => (source === "brief" && facts ? measure(facts) : null),
  });

/** Above the path positive. Heights whose datum nobody knows tell nothing of it. */
const abovePath: Facts = ({ glidePath, height }) =>
  glidePath && height && height.anchored !== "log"
    ? {
        ...{ value: glidePath.needle.mean, doubt95: glidePath.needle.doubt95 },
        at: shownAt(glidePath.needle.maxUtc),
      }
    : null;

export const APPROACH_TENDENCIES: readonly Tendency[] = [
  approach("final-side", "share", needleLimit, ({ needle }) => ({
    value: needle.mean,
    doubt95: needle.doubt95,
    at: shownAt(needle.maxUtc),
  })),
  approach("final-path", "share", limitOf("approach-glide-path"), abovePath),
  approach(
    "final-intercept",
    "share",
    needleLimit,
    ({ intercept, needle }) =>
      intercept && {
        ...{ value: intercept.overshootNeedle, doubt95: Math.min(1, needle.doubt95) },
        at: shownAt(intercept.startUtc, intercept.joinedUtc),
      },
    true,
  ),
  approach(
    "final-chasing",
    "per-min",
    () => CHASED.perMinute,
    ({ reversals, judged }) => reversals && chasedPerMinute(reversals.perMinute, judged.seconds),
    true,
  ),
];
