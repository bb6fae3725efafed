/** Gone below a step-down or a minimum: by how much, how surely, and whether near the ground. */
import type { Finding } from "../quantity/record.ts";
import type { Feet } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import type { ApproachFacts } from "./facts.ts";

/** Below a limit by less than this says nothing. Chosen: an altimeter's own reading. */
const BELOW_LEAST_FT = 20;

/** A climb begun no farther before the threshold may have been lowest over the runway. Chosen: some 8 s at 90 kt. */
const OVER_THRESHOLD_NM = 0.2;

/** Limits are heights by the altimeter: below by more than one standard deviation of the doubt against it, five to one. */
export const likely = ({ facts: { belowFt, doubt95Ft } }: Finding): boolean =>
  Number(belowFt) > Number(doubt95Ft ?? Infinity) / Z95;

export function belowLimits(facts: ApproachFacts): Finding[] {
  const { minimum, stepDowns, missed, runway } = facts;
  const found: Finding[] = [];
  for (const step of stepDowns) {
    if (!(step.marginFt !== null && step.marginFt < -BELOW_LEAST_FT)) continue;
    const below = step.lowestUtc ?? step.passedUtc;
    found.push({
      code: "below-step-down",
      facts: {
        name: step.name,
        limitFt: step.limitFt,
        belowFt: -step.marginFt,
        doubt95Ft: step.altimeter95Ft,
        sure: -step.marginFt > (step.altimeter95Ft ?? Infinity),
      },
      evidence: { fromUtc: below, toUtc: below },
    });
  }
  // the one gone below by most leads
  found.sort((a, b) => Number(b.facts.belowFt) - Number(a.facts.belowFt));
  if (minimum && missed && minimum.marginFt !== null && minimum.marginFt < -BELOW_LEAST_FT) {
    found.push({
      code: minimum.kind === "descent" ? "below-minimum" : "sank-below-decision",
      facts: {
        altitudeFt: minimum.altitudeFt,
        belowFt: -minimum.marginFt,
        doubt95Ft: minimum.altimeter95Ft,
        sure: -minimum.marginFt > (minimum.altimeter95Ft ?? Infinity),
        passedNm: minimum.passedNm,
        climbBelowFt: minimum.altitudeFt - missed.altitudeFt,
        climbNm: missed.distanceNm,
        climbSilentS: missed.silence?.seconds ?? null,
        ...groundNear({ minimum, missed, runway }),
      },
      evidence: { fromUtc: minimum.passedUtc, toUtc: minimum.lowestUtc },
    });
  }
  return [...found, ...levelBelowMinimum(facts)];
}

/** Below a minimum descent altitude a landing goes by right, but not level: the longest stretch that was flown so, where no climb away tells of the lowest. */
function levelBelowMinimum({ minimum, missed, descent }: ApproachFacts): Finding[] {
  if (minimum?.kind !== "descent" || missed || !descent) return [];
  const under = descent.levels.filter((level) => minimum.altitudeFt - level.altitudeFt > BELOW_LEAST_FT);
  if (under.length === 0) return [];
  const { altitudeFt, altimeter95Ft, seconds, fromNm, toNm, fromUtc, toUtc } = under.reduce((a, b) =>
    b.seconds > a.seconds ? b : a,
  );
  const belowFt = minimum.altitudeFt - altitudeFt;
  return [
    {
      code: "level-below-minimum",
      facts: {
        ...{ altitudeFt: minimum.altitudeFt, belowFt, doubt95Ft: altimeter95Ft ?? null },
        sure: belowFt > (altimeter95Ft ?? Infinity),
        ...{ seconds, fromNm, toNm },
      },
      evidence: { fromUtc, toUtc },
    },
  ];
}

/** How high above the threshold the lowest was before a climb away, where over it the doubt does not keep it off the ground; null where it does. */
export function groundNear({
  minimum,
  missed,
  runway: { elevationFt },
}: Pick<ApproachFacts, "minimum" | "missed" | "runway">): {
  readonly groundFt: Feet;
  readonly ground95Ft: Feet;
} | null {
  if (!minimum || !missed || elevationFt === null) return null;
  const { altitudeFt, lowestFt, doubt95Ft, unseen } = minimum;
  if (lowestFt === null || doubt95Ft === null) return null;
  const groundFt = lowestFt - elevationFt;
  const perhapsFt = unseen ? Math.min(groundFt, altitudeFt - unseen.most - elevationFt) : groundFt;
  if (missed.distanceNm > OVER_THRESHOLD_NM || perhapsFt > doubt95Ft) return null;
  return { groundFt, ground95Ft: doubt95Ft };
}
