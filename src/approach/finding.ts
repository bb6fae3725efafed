/** What is worth saying of an approach as flown: codes with facts and the times they rest on, most telling first. */
import type { Finding } from "../quantity/record.ts";
import type { Share } from "../quantity/units.ts";
import { GLIDE_PATH } from "../standard/approach-guidance.ts";
import { OVERSHOT_NEEDLE } from "../standard/tracking.ts";
import { wentOnFacts } from "../track/index.ts";
import { belowLimits, likely } from "./below-limits.ts";
import { type ApproachFacts, onWheels } from "./facts.ts";
import { downToMinimum } from "./far-above.ts";
import { within } from "./tracking-finding.ts";
import { unstable, unsteady } from "./unstable.ts";

/** A minimum descent altitude left so far before the visual descent point is left early. Chosen. */
const EARLY_NM = 0.3;
type Evidence = Finding["evidence"];
const at = (utc: string | null): Evidence => ({ fromUtc: utc, toUtc: utc });

/** `departures`: what went wrong along the final. A cut that went past it says of the turn onto it what there is to say. */
export function findingsOf(facts: ApproachFacts, departures: readonly Finding[]): Finding[] {
  const below = belowLimits(facts);
  const joins = joined(facts);
  const never = joins.filter(({ code }) => code === "final-never-joined");
  const overshot = joins.some(({ code }) => code === "final-overshot");
  const left = departures.filter(({ code }) => !(overshot && code.startsWith("turned-")));
  const onTheWay = [...joins.filter((f) => !never.includes(f)), ...left];
  const held = within(facts);
  return [
    ...below.filter(likely),
    ...never,
    ...unstable(facts),
    ...(leadsAll(held, left) ? [...held, ...onTheWay] : [...onTheWay, ...held]),
    // what no text limits is graver than nothing
    ...unsteady(facts),
    // what the doubt of the heights leaves open leads nothing
    ...below.filter((f) => !likely(f)),
    ...early(facts),
    ...ended(facts),
  ];
}

/** A departure that came to this share of the worst needle made it. As of courses. */
const MADE_THE_WORST: Share = 0.8;

/** Over full scale leads what was smaller on the way; a track that was off and made it says more. */
function leadsAll(held: readonly Finding[], left: readonly Finding[]): boolean {
  const worst = Number(held.find(({ code }) => code === "final-within")?.facts.worstNeedle ?? 0);
  const made = left.some(({ facts }) => Math.abs(Number(facts.worstNeedle ?? 0)) >= MADE_THE_WORST * worst);
  return worst > 1 && !made;
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
  // the base leg of a circuit is no cut of the final: beside it, near the runway, any turn goes over full scale
  const past = Math.max(intercept.overshootNeedle, intercept.wentOn?.needle ?? 0);
  if (joinedFrom !== "circuit" && past >= OVERSHOT_NEEDLE)
    found.push({
      code: "final-overshot",
      facts: {
        side: intercept.startCrossTrackNm > 0 ? "left" : "right",
        overshootNm: intercept.overshootNm,
        overshootNeedle: intercept.overshootNeedle,
        ...wentOnFacts(intercept.wentOn),
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

/** A minimum descent altitude left before the visual descent point on the way to a landing. */
function early({ minimum, descent, glidePath, outcome }: ApproachFacts): Finding[] {
  const point = descent?.visualDescentPointNm;
  if (!onWheels(outcome) || minimum?.kind !== "descent" || !point || minimum.passedNm === null) return [];
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

function ended({
  runway,
  brokeOff,
  logEnd,
  minimum,
  missed,
  missedPoint,
  landing,
  touchAndGo,
  outcome,
  levelOverRunwayS,
}: ApproachFacts): Finding[] {
  if (missed) {
    const facts = {
      distanceNm: missed.distanceNm,
      silentS: missed.silence?.seconds ?? null,
      silentFromNm: missed.silence?.fromNm ?? null,
      silentToNm: missed.silence?.toNm ?? null,
      pastMissedPointNm: missedPoint.distanceNm - missed.distanceNm,
      heightFt: missed.heightFt,
      minimum: minimum?.kind ?? null,
      aboveMinimumFt: minimum && missed.altitudeFt - minimum.altitudeFt,
      aboveMinimum95Ft: minimum && missed.altimeter95Ft,
      downToIt: downToMinimum({ minimum, missed }),
      // at a minimum descent altitude that is as it should be
      levelNm: (minimum?.kind === "decision" && missed.level?.nm) || null,
      levelS: (minimum?.kind === "decision" && missed.level?.seconds) || null,
      climbFpm: missed.climbFpm,
      trackErrorDeg: missed.trackErrorDeg,
      courseTrueDeg: missed.course?.trueDeg ?? null,
      courseMagneticDeg: missed.course?.magneticDeg ?? null,
      courseErrorDeg: missed.course?.track?.meanErrorDeg ?? null,
      courseWorstDeg: missed.course?.track?.worstErrorDeg ?? null,
      turnedOnto: missed.course?.track?.turnedOnto ?? null,
      ...(outcome === "missed" ? {} : { levelNm: null, levelS: levelOverRunwayS ?? null }),
    };
    return [
      { code: outcome === "missed" ? "missed-approach" : "low-pass", facts, evidence: at(missed.startUtc) },
    ];
  }
  if (brokeOff) {
    const { utc, distanceNm, altitudeFt, side, landed } = brokeOff;
    const facts = {
      distanceNm,
      altitudeFt,
      minimumFt: minimum?.altitudeFt ?? null,
      side,
      runway: runway.ident,
    };
    const then = { landed: landed?.way ?? null, landedUtc: landed?.utc ?? null };
    return [{ code: "left-final", facts: { ...facts, ...then }, evidence: at(utc) }];
  }
  if (logEnd) {
    const { utc, distanceNm, altitudeFt } = logEnd;
    const facts = { distanceNm, altitudeFt, minimumFt: minimum?.altitudeFt ?? null };
    return [{ code: "log-ends-in-flight", facts, evidence: at(utc) }];
  }
  if (!landing) return [];
  const facts = {
    thresholdFt: landing.thresholdFt,
    groundSpeedKt: landing.groundSpeedKt,
    threshold95Ft: landing.threshold95Ft ?? null,
    silentS: landing.silence?.seconds ?? null,
  };
  if (!touchAndGo) return [{ code: "landed", facts, evidence: at(landing.thresholdUtc) }];
  const { slowestKt, slowestNm, climbNm, climbUtc } = touchAndGo;
  return [
    {
      code: "touch-and-go",
      facts: { ...facts, slowestKt, slowestNm, climbNm },
      evidence: { fromUtc: landing.thresholdUtc, toUtc: climbUtc },
    },
  ];
}
