/** What is worth saying of an approach as flown: codes with facts and the times they rest on, most telling first. */
import type { ApproachExercise } from "../brief/brief.ts";
import { magneticFromTrue } from "../quantity/angle.ts";
import type { Finding } from "../quantity/record.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import { GLIDE_PATH } from "../standard/approach-guidance.ts";
import { CHASED, OVERSHOT_NEEDLE } from "../standard/tracking.ts";
import { type ExcursionRows, excursionFinding, toldExcursions } from "../track/index.ts";
import type { ApproachFacts } from "./facts.ts";
import { belowLimits, likely } from "./finding-below.ts";
import type { ApproachRows } from "./rows.ts";
import { unstable } from "./unstable.ts";

/** A minimum descent altitude left so far before the visual descent point is left early. Chosen. */
const EARLY_NM = 0.3;
type Evidence = Finding["evidence"];
const at = (utc: string | null): Evidence => ({ fromUtc: utc, toUtc: utc });

export function findingsOf(facts: ApproachFacts, trackOff: readonly Finding[]): Finding[] {
  const below = belowLimits(facts);
  return [
    ...below.filter(likely),
    ...unstable(facts),
    ...joined(facts),
    ...chased(facts),
    ...trackOff,
    ...within(facts),
    // what the doubt of the heights leaves open leads nothing
    ...below.filter((f) => !likely(f)),
    ...early(facts),
    ...ended(facts),
  ];
}

function joined({
  intercept,
  finalFix,
  finalFixPassage,
  joinedFrom,
  procedureTurn: turn,
}: ApproachFacts): Finding[] {
  const found: Finding[] = [];
  if (turn && turn.farthestNm > turn.limitNm)
    found.push({
      code: "procedure-turn-far",
      facts: { from: turn.farthestFrom, farthestNm: turn.farthestNm, limitNm: turn.limitNm },
      evidence: { fromUtc: turn.outboundUtc, toUtc: turn.rollOut.utc },
    });
  if (joinedFrom === "not-joined") found.push({ code: "final-never-joined", facts: {}, evidence: at(null) });
  if (!intercept) return found;
  const { startUtc, joinedUtc, angleDeg } = intercept;
  const evidence = { fromUtc: startUtc, toUtc: joinedUtc };
  if (intercept.overshootNeedle >= OVERSHOT_NEEDLE)
    found.push({
      code: "final-overshot",
      facts: {
        side: intercept.startCrossTrackNm > 0 ? "left" : "right",
        overshootNm: intercept.overshootNm,
        overshootNeedle: intercept.overshootNeedle,
        angleDeg: Math.abs(angleDeg),
      },
      evidence,
    });
  if (finalFix && finalFixPassage && !finalFixPassage.established)
    found.push({
      code: "joined-inside-final-fix",
      facts: {
        fix: finalFix.ident,
        joinedNm: intercept.joinedDistanceNm,
        fixNm: finalFix.distanceNm,
        needle: finalFixPassage.needle,
      },
      evidence,
    });
  return found;
}

const wasChased = ({ reversals }: ApproachFacts): boolean =>
  reversals !== null && reversals.count >= CHASED.count && reversals.perMinute >= CHASED.perMinute;

/** The track told before the needle did, the farthest first. */
export function trackOffFindings(
  { magnetic, variation: { from, degrees } }: ApproachExercise,
  rows: ApproachRows,
  facts: ApproachFacts,
  excursions: readonly ExcursionRows[],
): Finding[] {
  const north = (d: TrueDegrees) =>
    from === "unknown" || magnetic === null ? null : magneticFromTrue(d, degrees);
  return toldExcursions(rows, excursions, wasChased(facts)).map((e) =>
    excursionFinding("final-track-off", rows, e, north),
  );
}

function chased(facts: ApproachFacts): Finding[] {
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

function within({ needle, crossTrack, glidePath, judged }: ApproachFacts): Finding[] {
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

/** A minimum descent altitude left before the visual descent point on the way to a landing. */
function early({ minimum, descent, glidePath, outcome }: ApproachFacts): Finding[] {
  const point = descent?.visualDescentPointNm;
  if (outcome !== "landed" || minimum?.kind !== "descent" || !point || minimum.passedNm === null) return [];
  if (minimum.passedNm - point < EARLY_NM) return [];
  return [
    {
      code: "left-minimum-early",
      facts: {
        leftNm: minimum.passedNm,
        visualDescentPointNm: point,
        angleDeg: glidePath?.angleDeg ?? GLIDE_PATH.usualAngle,
        altitudeFt: minimum.altitudeFt,
      },
      evidence: at(minimum.passedUtc),
    },
  ];
}

function ended({ missed, missedPoint, landing, outcome }: ApproachFacts): Finding[] {
  if (missed) {
    const facts = {
      distanceNm: missed.distanceNm,
      pastMissedPointNm: missedPoint.distanceNm - missed.distanceNm,
      heightFt: missed.heightFt,
      climbFpm: missed.climbFpm,
      trackErrorDeg: missed.trackErrorDeg,
      courseTrueDeg: missed.course?.trueDeg ?? null,
      courseMagneticDeg: missed.course?.magneticDeg ?? null,
      courseErrorDeg: missed.course?.track?.meanErrorDeg ?? null,
      courseWorstDeg: missed.course?.track?.worstErrorDeg ?? null,
      turnedOnto: missed.course?.track?.turnedOnto ?? null,
    };
    return [
      { code: outcome === "missed" ? "missed-approach" : "low-pass", facts, evidence: at(missed.startUtc) },
    ];
  }
  if (!landing) return [];
  const facts = { thresholdFt: landing.thresholdFt, groundSpeedKt: landing.groundSpeedKt };
  return [{ code: "landed", facts, evidence: at(landing.thresholdUtc) }];
}
