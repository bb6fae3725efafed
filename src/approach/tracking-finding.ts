/** What is worth saying of how the final course and its path were kept: the track off before the needle, a chase, the worst. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Finding } from "../quantity/record.ts";
import { CHASED } from "../standard/tracking.ts";
import { type ExcursionRows, excursionFinding, toldExcursions } from "../track/index.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";

const wasChased = ({ reversals }: ApproachFacts): boolean =>
  reversals !== null && reversals.count >= CHASED.count && reversals.perMinute >= CHASED.perMinute;

/** The track told before the needle did, the farthest first. */
export function trackOffFindings(
  { variation }: ApproachExercise,
  rows: ApproachRows,
  facts: ApproachFacts,
  excursions: readonly ExcursionRows[],
): Finding[] {
  return toldExcursions(rows, excursions, wasChased(facts)).map((e) =>
    excursionFinding("final-track-off", rows, e, variation),
  );
}

export function chased(facts: ApproachFacts): Finding[] {
  const { reversals, judged } = facts;
  if (!reversals || !wasChased(facts)) return [];
  return [
    {
      code: "final-chased",
      facts: {
        reversals: reversals.count,
        perMinute: reversals.perMinute,
        amplitudeDeg: reversals.medianAmplitudeDeg,
        periodS: reversals.medianPeriodS,
      },
      evidence: { fromUtc: judged.fromUtc, toUtc: judged.toUtc },
    },
  ];
}

export function within({ needle, crossTrack, glidePath, judged }: ApproachFacts): Finding[] {
  const evidence = { fromUtc: judged.fromUtc, toUtc: judged.toUtc };
  const lateral: Finding = {
    code: "final-within",
    facts: {
      worstNeedle: Math.abs(needle.max),
      worstNm: crossTrack.maxNm,
      worstAtNm: needle.maxDistanceNm,
      doubt95: needle.doubt95,
    },
    evidence,
  };
  if (!glidePath) return [lateral];
  const path = glidePath.needle;
  return [
    lateral,
    {
      code: "glide-path-within",
      facts: {
        worstNeedle: Math.abs(path.max),
        side: path.max < 0 ? "below" : "above",
        worstFt: glidePath.worstFt,
        worstAtNm: path.maxDistanceNm,
        doubt95: path.doubt95,
      },
      evidence,
    },
  ];
}
