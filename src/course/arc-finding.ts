/** What is worth saying of an arc as flown: codes with facts and the times they rest on, most telling first. */

import type { ArcExercise } from "../brief/brief.ts";
import { RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { type ExcursionRows, excursionFinding } from "../track/index.ts";
import { type ArcExcursion, driftFindings, excursionCauses } from "./arc-cause.ts";
import type { ArcFacts } from "./arc-facts.ts";
import type { ArcJudged } from "./arc-judged.ts";
import { type ArcRows, sideOf, sweepOf } from "./arc-rows.ts";
import { evidence, gaps } from "./finding.ts";

/** A drift is told first when it came to this. Chosen: half of the mile that the published limit allows. */
const WORTH_TELLING: NauticalMiles = 0.5;
/** A turn is early or late from this on, NM along the way or round the arc. Tuned: leads of simulated turns are explained to 0.1 NM rms. */
const MISTIMED: NauticalMiles = 0.25;
/** Left so far before its last radial, an arc was cut short. Chosen: more than any lead. */
const CUT_SHORT: NauticalMiles = 2;
/** A distance held with no more scatter (one standard deviation) was meant. Chosen: half of what a flown arc strays in wind. */
const STEADY_NM: NauticalMiles = 0.15;

export function arcFindings(
  exercise: ArcExercise,
  rows: ArcRows,
  judged: ArcJudged,
  facts: ArcFacts,
  told: readonly ArcExcursion[],
): Finding[] {
  const { deviation } = facts;
  const within: Finding = {
    code: "arc-within",
    facts: {
      worstNm: deviation.maxNm,
      radialTrueDeg: deviation.maxRadialTrueDeg,
      radialMagneticDeg: deviation.maxRadialMagneticDeg,
      meanNm: deviation.meanNm,
      withinHalfNm: deviation.withinHalfNm,
      withinOneNm: deviation.withinOneNm,
      doubt95Nm: deviation.doubt95Nm,
      shareOf: facts.judged.shareOf,
    },
    evidence: evidence(rows, judged.span),
  };
  const never: Finding[] =
    judged.joinedAt === null
      ? [
          {
            code: "arc-never-joined",
            facts: {
              ...{ worstNm: deviation.maxNm, meanNm: deviation.meanNm },
              heldNm: isSteady(deviation) ? facts.radiusNm + deviation.meanNm : null,
            },
            evidence: evidence(rows, judged.span),
          },
        ]
      : [];
  // who held another distance did not drift there: what brought the aircraft to it was the way in
  const elsewhere = never.length > 0 && isSteady(deviation);
  const drifted = elsewhere
    ? []
    : [
        ...driftFindings(facts),
        ...told.flatMap((e) => [trackOffFinding(exercise, rows, e), ...excursionCauses(facts, e)]),
      ];
  const large = Math.abs(deviation.maxNm) >= WORTH_TELLING;
  // who never joined it has not turned onto it, nor off it
  const turns = never.length > 0 ? [] : [...turnInFinding(facts), ...turnOffFinding(exercise, facts)];
  return [
    ...never,
    ...(large
      ? [...drifted, ...turns, within]
      : [...turns.slice(0, 1), within, ...turns.slice(1), ...drifted]),
    ...gaps(rows, judged.span),
  ];
}

/** Another distance was held all along: the brief may give the wrong one. */
const isSteady = ({ meanNm, rmsNm }: ArcFacts["deviation"]): boolean =>
  rmsNm * rmsNm - meanNm * meanNm < STEADY_NM * STEADY_NM;

/** The track told before the distance did: the same as of a course, but outside and inside. */
function trackOffFinding(exercise: ArcExercise, rows: ArcRows, e: ExcursionRows): Finding {
  const found = excursionFinding("arc-track-off", rows, e, exercise.variation);
  const outside = e.record.worstCrossTrackNm * sideOf(exercise) < 0;
  return { ...found, facts: { ...found.facts, side: outside ? "outside" : "inside" } };
}

function turnInFinding({ turnIn }: ArcFacts): Finding[] {
  if (!turnIn || turnIn.neededNm === null) return [];
  const late = turnIn.neededNm - turnIn.leadNm;
  if (!(Math.abs(late) >= MISTIMED)) return [];
  return [
    {
      code: "arc-turned-onto",
      facts: {
        late: late > 0,
        leadNm: turnIn.leadNm,
        neededNm: turnIn.neededNm,
        byNm: Math.abs(late),
        rateDegS: turnIn.rateDegS,
        rollOutNm: turnIn.rollOutNm,
      },
      evidence: { fromUtc: turnIn.utc, toUtc: null },
    },
  ];
}

function turnOffFinding(exercise: ArcExercise, facts: ArcFacts): Finding[] {
  const { turnOff, radiusNm } = facts;
  if (!turnOff) return [];
  const miles = (degrees: number) => degrees * RADIANS_PER_DEGREE * radiusNm;
  const at = { fromUtc: turnOff.utc, toUtc: turnOff.rollOutUtc };
  const told = {
    leadDeg: turnOff.leadDeg,
    radialTrueDeg: turnOff.radialTrueDeg,
    radialMagneticDeg: turnOff.radialMagneticDeg,
    rateDegS: turnOff.rateDegS,
  };
  const needed = turnOff.neededDeg;
  if (miles(turnOff.leadDeg - (needed ?? 0)) >= CUT_SHORT) {
    const share = facts.flownSweepDeg / sweepOf(exercise);
    return [{ code: "arc-cut-short", facts: { ...told, share }, evidence: at }];
  }
  if (needed === null) return [];
  const late = needed - turnOff.leadDeg;
  if (!(miles(Math.abs(late)) >= MISTIMED)) return [];
  return [
    {
      code: "arc-turned-off",
      facts: {
        ...told,
        late: late > 0,
        neededDeg: needed,
        byDeg: Math.abs(late),
        to: turnOff.to,
        rollOutNm: turnOff.rollOutCrossTrackNm,
        windUsed: turnOff.windUsed,
      },
      evidence: at,
    },
  ];
}
