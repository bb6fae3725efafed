/** The facts of one course as flown, gathered: deviation, track, wind correction, excursions, findings, columns. */
import type { CourseExercise } from "../brief/brief.ts";
import { positionOn } from "../geodesy/index.ts";
import { direction } from "../quantity/angle.ts";
import { metresFromNauticalMiles } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import { maskOf, type Span } from "../quantity/span.ts";
import { distanceFlown, intervals, weigh } from "../quantity/weigh.ts";
import { countReversals, isTold, joiningRecord, reversalsRecord, worstCauses } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { knownAlongOnly, measureCorrection, windOver, windRecord } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { beforeEstablished, partFindings } from "./before-established.ts";
import { beforeJoining } from "./before-joining.ts";
import { type CannotTell, correctionFacts, wholeReasons } from "./cannot-tell.ts";
import { findDepartures } from "./departures.ts";
import { altitudeFacts, crossTrackFacts, judgedFacts, needleFacts, trackFacts } from "./deviation.ts";
import type { CourseFacts, WhatWouldHaveWorked } from "./facts.ts";
import { findingsOf } from "./finding.ts";
import { isFitted } from "./fit.ts";
import { heldCorrection } from "./held-correction.ts";
import { cutOnto, flownThrough, turnBeganPast } from "./joining.ts";
import { judgedSpan } from "./judged.ts";
import { askedOf, partJudged } from "./part-judged.ts";
import { type CoursePath, measureRows, type Rows } from "./path.ts";
import { whatWouldHaveWorked } from "./rejoin.ts";
import type { CourseSeries } from "./series.ts";
import { edgeFindings, roomOf, silentEdges } from "./silent-edges.ts";
import { asideFindings, turnedAside } from "./turned-aside.ts";

export interface CourseToMeasure {
  readonly exercise: CourseExercise;
  /** The used flight; rows are those of the motion where there is one. */
  readonly path: CoursePath;
  /** Rows of the path in which the exercise was flown; at least two. */
  readonly span: Span;
  /** Null where the log has no times. */
  readonly motion: Motion | null;
  readonly wind: WindEstimate | null;
}

export interface CourseMeasured {
  /** Rows of the path that were measured: what was flown after a turn aside that ended it is no part of it. */
  readonly span: Span;
  readonly facts: CourseFacts;
  readonly findings: Finding[];
  readonly whatWouldHaveWorked: WhatWouldHaveWorked;
  readonly series: CourseSeries;
}

/**
 * Measures a course as flown. Right of course positive throughout. What cannot be told is null and stands in
 * `cannotTell` with a reason: `no-times`, `wind-along-only`, `wind-not-known`, `all-near-station`, `no-height`.
 * @throws RangeError when the span has fewer than two rows or lies outside the path.
 */
export function measureCourse({
  exercise,
  path,
  span: flown,
  motion,
  wind,
}: CourseToMeasure): CourseMeasured {
  const fitted = isFitted(exercise);
  const aside = fitted ? null : turnedAside(exercise, path, flown, motion, wind);
  const span = aside?.span ?? flown;
  const rows = measureRows(exercise, path, span, motion, wind);
  const judged = judgedSpan(exercise, rows);
  const weights = intervals(rows, judged.span);
  const onPath = (s: Span): Span => ({ start: s.start + rows.pathStart, end: s.end + rows.pathStart });
  const measured = motion && wind ? measureCorrection(rows, judged.span, motion, wind) : null;
  const over = motion && wind ? windOver(wind, motion, onPath(judged.span)) : null;
  // where most headings are not known, the wind of their mean is no better known: one truth in an exercise
  const windFact = measured ? over : over && knownAlongOnly(over);
  const reversals = countReversals(rows, judged.span);
  const cut = fitted ? null : cutOnto(exercise, rows, judged.establishedAt);
  const through = fitted ? null : flownThrough(exercise, path, span, motion, judged.establishedAt);
  const joinedBy = through && through.overshootNm > (cut?.overshootNm ?? 0) ? through : cut;
  const began = joinedBy && turnBeganPast(exercise, path, span, motion, joinedBy);
  const intercept = began === null ? joinedBy : { ...joinedBy!, turnBeganPastNm: began };
  const correctionOver = (s: Span) => (motion && wind ? measureCorrection(rows, s, motion, wind) : null);
  const before = beforeEstablished(exercise, rows, judged);
  const unjudged = beforeJoining(exercise, rows, judged);
  const departures = { exercise, path, span, motion, rows, judged, intercept: cut, correctionOver };
  const { chased, weave, excursions, ...left } = findDepartures(departures);
  // minutes along the course, off it, are no turn that ended short of it
  const joining = before ? null : left.joining;
  const room = roomOf(exercise, rows, judged.span);
  const edges = fitted ? [] : silentEdges(rows, judged.span, motion, room);
  const part =
    fitted || judged.allNearStation
      ? null
      : partJudged(rows, judged.span, motion, path.latitude.length, askedOf(exercise, room));
  const altitude = altitudeFacts(exercise, rows, judged.span, edges);
  const cannotTell: CannotTell[] = [
    ...wholeReasons(rows, judged, altitude === null),
    ...correctionFacts(rows, windFact, measured),
  ];
  const speed = weigh(rows.groundSpeedKt, judged.span, weights);

  const facts: CourseFacts = {
    form: fitted ? "fitted" : exercise.form,
    fix: fitted ? null : exercise.fix.ident,
    fromFix: exercise.fromFix?.ident ?? null,
    courseTrueDeg: exercise.course.azimuth,
    courseMagneticDeg: exercise.magnetic,
    variation: { ...exercise.variation },
    scale: scaleFacts(exercise),
    line: lineOf(exercise, rows, judged.span),
    flownNm: distanceFlown(rows, { start: 0, end: rows.length }, true),
    judged: judgedFacts(rows, judged, weights),
    ...(part ? { part } : {}),
    ...(aside?.maybe ? { turnedAside: aside.maybe } : {}),
    ...(!fitted && rows.timed && judged.establishedAt === null ? { neverEstablished: true as const } : {}),
    ...(before ? { beforeEstablished: before } : {}),
    ...(unjudged && !before ? { beforeJoining: unjudged } : {}),
    crossTrack: crossTrackFacts(rows, judged.span, weights, edges),
    needle: needleFacts(exercise.scale, rows, judged.span, weights, edges),
    trackAngleError: trackFacts(rows, judged.span, weights),
    groundSpeedKt: speed.weight > 0 ? speed.mean : null,
    wind: windFact && windRecord(windFact),
    drift: measured && { meanDeg: measured.drift, doubt95Deg: measured.driftDoubt95 },
    windCorrection: measured && {
      flownDeg: measured.flown,
      neededDeg: measured.needed,
      heldDeg: fitted ? null : heldCorrection(rows, judged.span),
      doubt95Deg: measured.doubt95,
      headingFlownTrueDeg: direction(measured.course + measured.flown),
      headingNeededTrueDeg: direction(measured.course + measured.needed),
    },
    intercept,
    joining: joining && joiningRecord(joining),
    excursions: excursions.map((e) => e.record),
    causes: worstCauses(excursions.filter(isTold), joining, chased),
    reversals: reversals && reversalsRecord(weave && chased ? chased : reversals),
    altitude,
    cannotTell,
  };

  const told = findingsOf({
    exercise,
    rows,
    judged,
    facts,
    excursions,
    chased,
    weave,
    joining,
    correctionOver,
  });
  const afterwards = [...asideFindings(facts.turnedAside), ...edgeFindings(edges)];
  const findings = [...partFindings(before, rows, judged), ...told, ...afterwards];
  return {
    span,
    facts,
    findings,
    whatWouldHaveWorked: fitted
      ? null
      : whatWouldHaveWorked(
          exercise,
          rows,
          measured?.course ?? exercise.course.azimuth,
          windFact,
          excursions,
        ),
    series: seriesOf(rows, judged.span),
  };
}

function scaleFacts({ scale }: CourseExercise): CourseFacts["scale"] {
  const { id, label } = scale;
  return scale.kind === "angular"
    ? { id, kind: "angular", fullScaleDeg: scale.fullScaleDeg, label }
    : { id, kind: "linear", fullScaleNm: scale.fullScaleNm, label };
}

function lineOf(exercise: CourseExercise, rows: Rows, { start, end }: Span): CourseFacts["line"] {
  const at = (row: number): [number, number] => {
    const p = positionOn(exercise.course, metresFromNauticalMiles(rows.alongNm[row]!));
    return [p.latitude, p.longitude];
  };
  return { start: at(start), end: at(end - 1) };
}

function seriesOf(rows: Rows, judged: Span): CourseSeries {
  return {
    kind: "course",
    pathStart: rows.pathStart,
    timeMs: rows.timeMs,
    alongNm: rows.alongNm,
    distanceToFixNm: rows.distanceToFixNm,
    crossTrackNm: rows.crossTrackNm,
    needle: rows.needle,
    trackAngleErrorDeg: rows.trackErrorDeg,
    trackTrueDeg: rows.trackDeg,
    headingTrueDeg: rows.headingDeg,
    groundSpeedKt: rows.groundSpeedKt,
    altitudeFt: rows.altitudeFt,
    judged: maskOf(judged, rows.length),
  };
}
