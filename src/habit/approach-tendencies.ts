/** What may come back on final approaches: the side, the path, the intercept, the chase. */
import type { ApproachFacts, ApproachRecord } from "../debrief/document.ts";
import type { Share } from "../quantity/units.ts";
import { CHASING, chasedPerMinute } from "./chasing.ts";
import { type Measured, type Tendency, tendency } from "./tendency.ts";

/** Localizer and glide path alike: FAA-S-ACS-8C VI.B, less than three quarters of scale, from memory. */
const NEEDLE: Share = 0.75;

type Facts = (facts: ApproachFacts) => Measured | null;

const approach = (
  id: string,
  unit: Tendency["unit"],
  tolerance: number,
  measure: Facts,
  oneSided = false,
): Tendency =>
  tendency("approach", {
    ...{ id, unit, oneSided },
    tolerance: () => tolerance,
    measure: ({ source, facts }: ApproachRecord) => (source === "brief" && facts ? measure(facts) : null),
  });

/** Above the path positive. Heights whose datum nobody knows tell nothing of it. */
const abovePath: Facts = ({ glidePath, height }) =>
  glidePath && height && height.anchored !== "log"
    ? { value: glidePath.needle.mean, doubt95: glidePath.needle.doubt95 }
    : null;

export const APPROACH_TENDENCIES: readonly Tendency[] = [
  approach("final-side", "share", NEEDLE, ({ needle }) => ({ value: needle.mean, doubt95: needle.doubt95 })),
  approach("final-path", "share", NEEDLE, abovePath),
  approach(
    "final-intercept",
    "share",
    NEEDLE,
    ({ intercept, needle }) =>
      intercept && { value: intercept.overshootNeedle, doubt95: Math.min(1, needle.doubt95) },
    true,
  ),
  approach(
    "final-chasing",
    "per-min",
    CHASING,
    ({ reversals, judged }) => reversals && chasedPerMinute(reversals.perMinute, judged.seconds),
    true,
  ),
];
