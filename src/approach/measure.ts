/** The facts of one approach as flown, gathered: joining, fix, final, path, minimum, gates, missed approach, columns. */
import type { ApproachExercise } from "../brief/brief.ts";
import type { Position } from "../geodesy/position.ts";
import { gapFindings } from "../quantity/gap-finding.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { intervals, rowOfLargest, weigh, Z95 } from "../quantity/weigh.ts";
import { NOT_SHOWN } from "../standard/stabilised.ts";
import { countReversals, isTold, joiningRecord, reversalsRecord, worstCauses } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { measureCorrection, windOver, windRecord } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { adviceFor } from "./advice.ts";
import { askedFacts } from "./asked.ts";
import { beforeClimb } from "./before-climb.ts";
import { brokeOffFacts } from "./break-off.ts";
import { untold } from "./cannot-tell.ts";
import { utcAt } from "./column.ts";
import { seriesOf } from "./columns.ts";
import { findDepartures } from "./departures.ts";
import { descentOf } from "./descent.ts";
import { crossTrackFacts, judgedFacts, needleFacts } from "./deviation.ts";
import { landingOf, logEndOf } from "./end.ts";
import { type ApproachAdvice, type ApproachFacts, onWheels } from "./facts.ts";
import { findingsOf } from "./finding.ts";
import { fixPassage } from "./fix-passage.ts";
import { gatesOf } from "./gates.ts";
import { glidePathFacts } from "./glide.ts";
import { guideOf, onFinal } from "./guidance.ts";
import { heightDatum, untied } from "./height.ts";
import { interceptOf } from "./intercept.ts";
import { joinedFrom } from "./joining.ts";
import { minimumOf } from "./minimum.ts";
import { missedOf } from "./missed.ts";
import { partsOf, segmentFacts } from "./parts.ts";
import { findProcedureTurn, procedureTurnFacts } from "./procedure-turn.ts";
import { type ApproachPath, measureRows } from "./rows.ts";
import { segmentsOf } from "./segments.ts";
import type { ApproachSeries } from "./series.ts";
import { silentEnds } from "./silence.ts";
import { stepDownsOf } from "./step-downs.ts";
import { touchAndGoOf } from "./touch.ts";
import { departureFindings } from "./tracking-finding.ts";
import { pathGuideOf } from "./vertical.ts";

export interface ApproachToMeasure {
  readonly exercise: ApproachExercise;
  /** The used flight; rows are those of the motion where there is one. */
  readonly path: ApproachPath;
  /** Rows of the path in which the approach was flown, with what followed it; at least two. */
  readonly span: Span;
  /** Among these a procedure turn is looked for; not where not given. */
  readonly legs?: readonly Leg[];
  /** About which an arc to the final may have been flown; none where not given. */
  readonly stations?: readonly Position[];
  /** Null where the log has no times. */
  readonly motion: Motion | null;
  readonly wind: WindEstimate | null;
}

export interface ApproachMeasured {
  /** What was measured: as asked for, with the procedure turn before it. */
  readonly span: Span;
  readonly facts: ApproachFacts;
  readonly findings: Finding[];
  readonly whatWouldHaveWorked: ApproachAdvice;
  readonly series: ApproachSeries;
}

/**
 * Measures an approach as flown. What cannot be told is null and stands in `cannotTell` with a reason: `no-times`, `runway-length-assumed`,
 * `no-height`, `height-not-anchored`, `height-is-pressure`, `elevation-not-known`, `fix-not-passed`, `wind-not-known`, `wind-along-only`, `no-missed-course`.
 * @throws RangeError when the span has fewer than two rows or lies outside the path.
 */
export function measureApproach({
  exercise: asked,
  path,
  span: matched,
  motion,
  wind,
  legs = [],
  stations = [],
}: ApproachToMeasure): ApproachMeasured {
  const reversal = motion && findProcedureTurn(asked, matched, motion, legs);
  const span = { start: Math.min(matched.start, reversal?.outboundStart ?? matched.start), end: matched.end };
  const { heightsBy } = path;
  const datum = motion
    ? heightDatum(motion, asked.runway, span, heightsBy)
    : untied(asked.runway.elevation, heightsBy);
  const exercise = { ...asked, runway: { ...asked.runway, elevation: datum.elevation } };
  const guide = guideOf(exercise);
  const pathGuide = pathGuideOf(exercise);
  const fixDistance = exercise.finalFix && onFinal(exercise, exercise.finalFix).before;
  const from = { exercise, guide, pathGuide, path, span, motion, wind, datum };
  const rows = measureRows(from);
  const logEnds = span.end === path.latitude.length;
  const segments = segmentsOf(exercise, rows, fixDistance, logEnds);
  const { final, fix, outcome, threshold } = segments;
  const wheels = onWheels(outcome);
  const parts = partsOf(rows, segments);
  const weights = intervals(rows, final);
  const down = beforeClimb(rows, segments);
  const onPath: Span = { start: final.start + span.start, end: final.end + span.start };
  const windFact = motion && wind ? windOver(wind, motion, onPath) : null;
  const { descent, flownPath } = descentOf(exercise, rows, segments, down, pathGuide);
  const known = rows.altitudeFt.some((v) => !Number.isNaN(v));
  const reversals = countReversals(rows, final);
  const led = reversal ? "procedure-turn" : joinedFrom(exercise, rows, motion, segments, stations);
  const correctionOver = (s: Span) => (motion && wind ? measureCorrection(rows, s, motion, wind) : null);
  const departures = findDepartures(rows, segments, led, correctionOver);
  const { joining, excursions, chased } = departures;
  const edges = silentEnds(rows, final, {
    before: fix ? Math.max(0, fixDistance! - rows.distanceNm[final.start]!) : 0,
    after: Math.max(0, rows.distanceNm[final.end - 1]!),
  });
  const speed = weigh(rows.groundSpeedKt, final, weights);
  const errors = weigh(rows.trackErrorDeg, final, weights);
  const worst = rowOfLargest(rows.trackErrorDeg, final);
  const facts: ApproachFacts = {
    ...askedFacts(exercise, guide, rows),
    height: known
      ? {
          anchored: datum.anchored,
          correctionFt: datum.correction,
          doubt95Ft: Z95 * rows.heightSdFt[final.end - 1]!,
        }
      : null,
    segments: segmentFacts(rows, parts),
    joinedFrom: led,
    procedureTurn: reversal && procedureTurnFacts(exercise, motion!, reversal),
    intercept: interceptOf(from, rows, segments, led),
    finalFixPassage: fixPassage(rows, segments, known),
    judged: judgedFacts(rows, segments),
    crossTrack: crossTrackFacts(rows, final, weights),
    needle: (needleFacts(rows, final, weights, rows.judgedNeedle, { edges }) ??
      needleFacts(rows, final, weights, rows.needle, { edges }))!,
    trackAngleError:
      errors.weight > 0
        ? { meanDeg: errors.mean, rmsDeg: errors.rms, maxDeg: rows.trackErrorDeg[worst]! }
        : null,
    excursions: excursions.map(({ record }) => record),
    joining: joining && joiningRecord(joining),
    causes: worstCauses(excursions.filter(isTold), joining, chased),
    reversals: reversals && reversalsRecord(reversals),
    groundSpeedKt: speed.weight > 0 ? speed.mean : null,
    wind: windFact && windRecord(windFact),
    glidePath: glidePathFacts(rows, down, intervals(rows, down), pathGuide, fix !== null, edges),
    flownPath,
    descent,
    stepDowns: stepDownsOf(exercise, rows, segments),
    minimum: minimumOf(exercise, rows, segments),
    missedPoint: {
      distanceNm: exercise.missedPoint,
      passedUtc: segments.missedPoint && rows.timed ? utcAt(rows, segments.missedPoint) : null,
    },
    outcome,
    brokeOff: brokeOffFacts(exercise.runway, rows, segments.brokeOff, motion),
    ...(outcome === "log-ends" ? { logEnd: logEndOf(rows) } : {}),
    missed: missedOf(exercise, rows, segments, path),
    levelOverRunwayS: segments.over?.levelS ?? null,
    landing: wheels && threshold ? landingOf(rows, threshold) : null,
    touchAndGo: touchAndGoOf(rows, segments.over?.slowest ?? null, segments.climbOut),
    gates: gatesOf(rows, segments),
    notShown: [...NOT_SHOWN],
    cannotTell: untold({ exercise, rows, segments, datum, heightsBy, known, outcome, wind: windFact }),
  };
  // on the ground nothing more was flown
  const flown = outcome === "landed" && threshold ? Math.min(rows.length, threshold.row + 2) : rows.length;
  return {
    span,
    facts,
    findings: [
      ...findingsOf(facts, departureFindings(exercise, rows, departures, correctionOver)),
      ...gapFindings(rows.timeMs, { start: 0, end: flown }, (row) => rows.silentBefore(row) !== null),
    ],
    whatWouldHaveWorked: adviceFor(exercise, facts, windFact),
    series: seriesOf(rows, final, parts),
  };
}
