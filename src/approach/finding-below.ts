/** Where an approach went below a step-down or its minimum, and whether that is more likely than not. */
import type { Finding } from "../quantity/record.ts";
import { Z95 } from "../quantity/weigh.ts";
import type { ApproachFacts } from "./facts.ts";

/** Below a limit by less than this says nothing. Chosen: an altimeter's own reading. */
const BELOW_LEAST_FT = 20;

/** Limits are heights by the altimeter: below by more than one standard deviation of the doubt against it, five to one. */
export const likely = ({ facts: { belowFt, doubt95Ft } }: Finding): boolean =>
  Number(belowFt) > Number(doubt95Ft ?? Infinity) / Z95;

export function belowLimits({ minimum, stepDowns, missed }: ApproachFacts): Finding[] {
  const found: Finding[] = [];
  for (const step of stepDowns) {
    if (!(step.marginFt !== null && step.marginFt < -BELOW_LEAST_FT)) continue;
    found.push({
      code: "below-step-down",
      facts: {
        name: step.name,
        limitFt: step.limitFt,
        belowFt: -step.marginFt,
        doubt95Ft: step.altimeter95Ft,
        sure: -step.marginFt > (step.altimeter95Ft ?? Infinity),
      },
      evidence: { fromUtc: step.passedUtc, toUtc: step.passedUtc },
    });
  }
  if (minimum && missed && minimum.marginFt !== null && minimum.marginFt < -BELOW_LEAST_FT) {
    found.push({
      code: minimum.kind === "descent" ? "below-minimum" : "sank-below-decision",
      facts: {
        altitudeFt: minimum.altitudeFt,
        belowFt: -minimum.marginFt,
        doubt95Ft: minimum.altimeter95Ft,
        sure: -minimum.marginFt > (minimum.altimeter95Ft ?? Infinity),
        passedNm: minimum.passedNm,
      },
      evidence: { fromUtc: minimum.passedUtc, toUtc: minimum.lowestUtc },
    });
  }
  return found;
}
