/** What is worth saying of how the final course and its path were kept: the track off before the needle and why, a chase, the worst. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import {
  type Correction,
  causeFindings,
  chasedFinding,
  excursionFinding,
  toldExcursions,
  turnedFindings,
} from "../track/index.ts";
import type { Departures } from "./departures.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";

/** A chase, then where the track told before the needle did and why, the farthest first, and a turn that ended off the final: this first where it was the worst. */
export function departureFindings(
  { variation }: ApproachExercise,
  rows: ApproachRows,
  { joining, chased, excursions }: Departures,
  correctionOver: (span: Span) => Correction | null,
): Finding[] {
  const told = toldExcursions(rows, excursions, chased !== null);
  const drifts = told.flatMap((e) => [
    excursionFinding("final-track-off", rows, e, variation),
    ...causeFindings(e, correctionOver(e.drifting)),
  ]);
  const turned = turnedFindings(joining);
  const worst = Math.max(0, ...told.map(({ record }) => Math.abs(record.worstCrossTrackNm)));
  const turnedWorse = joining !== null && Math.abs(joining.crossTrackNm) >= worst;
  return [
    ...(chased ? [chasedFinding("final-chased", rows, chased)] : []),
    ...(turnedWorse ? [...turned, ...drifts] : [...drifts, ...turned]),
  ];
}

export function within({ needle, crossTrack, glidePath, judged, cannotTell }: ApproachFacts): Finding[] {
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
  const beside = cannotTell.some(({ reason }) => reason === "all-near-station");
  const across = beside ? [] : [lateral];
  if (!glidePath) return across;
  const path = glidePath.needle;
  return [
    ...across,
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
