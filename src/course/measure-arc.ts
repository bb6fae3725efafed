/** The facts of one arc as flown, gathered: distances, wind, turns onto it and off it, findings, columns. */
import type { ArcExercise } from "../brief/brief.ts";
import { arcPlaces } from "../geodesy/index.ts";
import { DEGREES_PER_RADIAN, metresFromNauticalMiles } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import { maskOf, type Span } from "../quantity/span.ts";
import { intervals, weigh } from "../quantity/weigh.ts";
import { causesOf, findExcursions, toldExcursions } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { windOver, windRecord } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { deviationFacts, sinceRollOut, slantOver } from "./arc-deviation.ts";
import type { ArcFacts, ArcRemedy } from "./arc-facts.ts";
import { arcFindings } from "./arc-finding.ts";
import { type ArcJudged, judgedArc } from "./arc-judged.ts";
import { type ArcRows, measureArcRows, sideOf, sweepOf } from "./arc-rows.ts";
import { turnInFacts, turnOffFacts, turnUnseen } from "./arc-turns.ts";
import { arcRemedy, correctionOnArc, driftFacts, driftSpan } from "./arc-wind.ts";
import type { CannotTell } from "./cannot-tell.ts";
import { altitudeFacts, judgedFacts, trackFacts } from "./deviation.ts";
import { partJudged } from "./part-judged.ts";
import type { CoursePath } from "./path.ts";
import type { ArcSeries } from "./series.ts";
import { edgeFindings, silentEdges } from "./silent-edges.ts";

export interface ArcToMeasure {
  readonly exercise: ArcExercise;
  /** The used flight; rows are those of the motion where there is one. */
  readonly path: CoursePath;
  /** Rows of the path in which the arc was flown, with the turns onto it and off it; at least two. */
  readonly span: Span;
  /** Null where the log has no times. */
  readonly motion: Motion | null;
  /** Straights and turns of the whole flight; empty where the log has no times. */
  readonly legs: readonly Leg[];
  readonly wind: WindEstimate | null;
}

export interface ArcMeasured {
  readonly facts: ArcFacts;
  readonly findings: Finding[];
  readonly whatWouldHaveWorked: ArcRemedy;
  readonly series: ArcSeries;
}

/**
 * Measures an arc as flown: deviation is distance from the station less the radius, outside positive, over the ground.
 * What cannot be told is null and stands in `cannotTell` with a reason: `no-times`, `wind-not-known`, `no-height`, `turn-in-silence`.
 * @throws RangeError when the span has fewer than two rows or lies outside the path.
 */
export function measureArc({ exercise, path, span, motion, legs, wind }: ArcToMeasure): ArcMeasured {
  const rows = measureArcRows(exercise, path, span, motion, wind);
  const sweep = sweepOf(exercise);
  const judged = judgedArc(rows, legs, sweep);
  const weights = intervals(rows, judged.span);
  const milesRound = (degrees: number) => Math.max(0, degrees / DEGREES_PER_RADIAN) * exercise.radius;
  const correction = wind && correctionOnArc(exercise, rows, judged.span, wind);
  const drifted = driftSpan(rows, judged.span);
  const ownWind =
    motion && wind
      ? windOver(wind, motion, {
          start: judged.span.start + rows.pathStart,
          end: judged.span.end + rows.pathStart,
        })
      : null;
  const room = {
    before: milesRound(rows.goneDeg[judged.span.start]!),
    after: milesRound(sweep - rows.goneDeg[judged.span.end - 1]!),
  };
  const edges = silentEdges(rows, judged.span, motion, room);
  const asked = { room, lengthNm: milesRound(sweep), window: exercise.between !== null };
  const part = partJudged(rows, judged.span, motion, path.latitude.length, asked);
  const altitude = altitudeFacts(exercise, rows, judged.span, edges);
  const speed = weigh(rows.groundSpeedKt, judged.span, weights);
  const heights = weigh(rows.altitudeFt, judged.span, weights);
  const flown = motion && { exercise, path, motion, wind };
  const turnOff = flown && judged.turnOff ? turnOffFacts(flown, judged.turnOff) : null;
  const excursions = findExcursions(rows, sinceRollOut(rows, judged)).map((e) => {
    const drifting = wind && correctionOnArc(exercise, rows, e.drifting, wind);
    const causes = causesOf(e, { rows, joining: null, chased: null, correction: drifting });
    return { ...e, correction: drifting, record: { ...e.record, causes } };
  });
  const gone = (row: number) => Math.max(0, Math.min(sweep, rows.goneDeg[row]!));

  const facts: ArcFacts = {
    fix: exercise.fix.ident,
    radiusNm: exercise.radius,
    turns: exercise.turns,
    fromRadialTrueDeg: exercise.fromRadial,
    fromRadialMagneticDeg: exercise.fromMagnetic,
    toRadialTrueDeg: exercise.toRadial,
    toRadialMagneticDeg: exercise.toMagnetic,
    variation: { ...exercise.variation },
    line: arcPlaces(
      exercise.fix,
      metresFromNauticalMiles(exercise.radius),
      exercise.fromRadial,
      sideOf(exercise) * sweep,
    ).map(({ latitude, longitude }): [number, number] => [latitude, longitude]),
    station: [exercise.fix.latitude, exercise.fix.longitude],
    sweepDeg: sweep,
    flownSweepDeg: gone(judged.span.end - 1) - gone(judged.span.start),
    flownNm: rows.flownNm[rows.length - 1]!,
    judged: {
      ...judgedFacts(rows, judged, weights),
      distanceNm: rows.flownNm[judged.span.end - 1]! - rows.flownNm[judged.span.start]!,
    },
    ...(part ? { part } : {}),
    deviation: deviationFacts(rows, judged.span, weights, exercise.variation, edges),
    dmeReadsMoreNm:
      heights.weight > 0 ? slantOver(exercise.radius, heights.mean - (exercise.fix.elevation ?? 0)) : null,
    trackAngleError: trackFacts(rows, judged.span, weights),
    groundSpeedKt: speed.weight > 0 ? speed.mean : null,
    wind: ownWind && windRecord(ownWind),
    windOutKt: correction?.windOut ?? null,
    windCorrection: correction && {
      flownDeg: correction.flown,
      neededDeg: correction.needed,
      doubt95Deg: correction.doubt95,
    },
    drift: drifted && driftFacts(rows, drifted, wind && correctionOnArc(exercise, rows, drifted, wind)),
    excursions: excursions.map(({ record }) => record),
    turnIn: flown && judged.turnIn ? turnInFacts(flown, judged.turnIn) : null,
    turnOff,
    altitude,
    cannotTell: [...untold(rows, correction !== null, altitude === null), ...turnsUnseen(motion, judged)],
  };
  const remedy =
    correction && ownWind?.from != null && ownWind.speed !== null && ownWind.trueAirspeed
      ? arcRemedy(
          exercise,
          {
            from: ownWind.from,
            speed: ownWind.speed,
            trueAirspeed: ownWind.trueAirspeed,
            doubt95: correction.doubt95,
          },
          turnOff?.standardRateDeg ?? null,
        )
      : null;
  return {
    facts,
    findings: [
      ...arcFindings(exercise, rows, judged, facts, toldExcursions(rows, excursions, false)),
      ...edgeFindings(edges),
    ],
    whatWouldHaveWorked: remedy,
    series: seriesOf(rows, judged.span),
  };
}

/** The turns onto it and off it that the log is silent about. */
function turnsUnseen(motion: Motion | null, { turnIn, turnOff }: ArcJudged): CannotTell[] {
  const unseen = (turn: Leg | null) => motion !== null && turn !== null && turnUnseen(motion, turn);
  return [...(unseen(turnIn) ? ["turnIn"] : []), ...(unseen(turnOff) ? ["turnOff"] : [])].map((fact) => ({
    fact,
    reason: "turn-in-silence",
  }));
}

function untold(rows: ArcRows, windKnown: boolean, withoutHeight: boolean): CannotTell[] {
  const reason = rows.timed ? "wind-not-known" : "no-times";
  return [
    ...(rows.timed ? [] : ["trackAngleError", "groundSpeed", "drift", "turnIn", "turnOff"]).map((fact) => ({
      fact,
      reason,
    })),
    ...(windKnown ? [] : ["windCorrection", "whatWouldHaveWorked"].map((fact) => ({ fact, reason }))),
    ...(withoutHeight ? [{ fact: "altitude", reason: "no-height" }] : []),
  ];
}

function seriesOf(rows: ArcRows, judged: Span): ArcSeries {
  return {
    kind: "arc",
    pathStart: rows.pathStart,
    timeMs: rows.timeMs,
    alongNm: rows.alongNm,
    crossTrackNm: rows.crossTrackNm,
    radialTrueDeg: rows.radialDeg,
    goneDeg: rows.goneDeg,
    distanceNm: rows.distanceNm,
    deviationNm: rows.deviationNm,
    trackAngleErrorDeg: rows.trackErrorDeg,
    trackTrueDeg: rows.trackDeg,
    headingTrueDeg: rows.headingDeg,
    groundSpeedKt: rows.groundSpeedKt,
    altitudeFt: rows.altitudeFt,
    judged: maskOf(judged, rows.length),
  };
}
