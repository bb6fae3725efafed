/** The facts of one hold as flown, gathered: entry, laps, what the wind asked for, findings, columns. */
import type { HoldExercise } from "../brief/brief.ts";
import { courseThrough, modelVariation, type PointKind } from "../geodesy/index.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import type { Finding } from "../quantity/record.ts";
import type { FeetMsl, Seconds, UtcMillis } from "../quantity/units.ts";
import type { HoldingStandard, TurnSide } from "../standard/holding.ts";
import { NEEDLE_SCALES, type NeedleScale } from "../standard/needle.ts";
import type { Motion } from "../track/motion.ts";
import { windOver, windRecord } from "../wind/index.ts";
import type { WindEstimate, WindFact } from "../wind/wind.ts";
import { asFlown } from "./as-flown.ts";
import { askedBy, type Held, inStillAir, isSolved } from "./asked.ts";
import { courseLean } from "./course-lean.ts";
import { entryFacts, firstPass } from "./entry-facts.ts";
import type { HoldFacts } from "./facts.ts";
import { findingsOf } from "./finding.ts";
import type { FoundHold } from "./found.ts";
import { frameOf, type HoldFrame, inFrame, inMotion, meanBetween, rowsBetween } from "./frame.ts";
import { heightOfHold } from "./height.ts";
import { type LapMoments, lapFacts, timesOf } from "./lap.ts";
import { lastTrack } from "./last-track.ts";
import { legOf } from "./leg-meant.ts";
import { legOffOf } from "./leg-off.ts";
import { legsInSilence, usualStep } from "./leg-silence.ts";
import { lapsCut } from "./log-ends.ts";
import { outlineOf } from "./outline.ts";
import type { HoldSeries } from "./series.ts";
import { nonHoldingSide } from "./side.ts";
import { speedFacts } from "./speed.ts";

export interface HoldToMeasure {
  /** As published; null where the hold was found without a brief, and is measured against its own fix and course. */
  readonly exercise: HoldExercise | null;
  readonly found: FoundHold;
  readonly motion: Motion;
  readonly wind: WindEstimate | null;
  readonly standard: HoldingStandard;
}

export interface HoldMeasured {
  readonly facts: HoldFacts;
  readonly findings: Finding[];
  readonly series: HoldSeries;
}

/**
 * Measures a hold as flown. Along: from the fix in the direction of the inbound course; across: right of it positive;
 * corrections: heading less the leg's own direction, right positive; all directions true. What cannot be told is null and
 * stands in `cannotTell` with a reason: `wind-along-only`, `wind-not-known`, `no-height`, `doubt-holds-limit`.
 */
export function measureHold({ exercise, found, motion, wind, standard }: HoldToMeasure): HoldMeasured {
  const course = exercise?.course ?? courseThrough(found.fix, found.inbound);
  const turns = exercise?.turns ?? found.turns;
  const frame = frameOf(course, found.turns, found.span, motion, wind);
  const times = timesOf(frame, found.laps);
  const { begin, end } = timeHeld(frame, found, times);
  const heights = heightOfHold(frame, begin, end, exercise?.altitude ?? null);
  const altitude: FeetMsl | null = exercise?.altitude ?? heights?.meanFt ?? null;
  const inbound95 = Math.max(found.inbound95, courseLean(frame, times, found.inbound));
  const held: Held = {
    inbound: course.azimuth,
    inbound95: exercise ? 0 : inbound95,
    turns,
    leg: legOf(exercise, times, standard, altitude),
    standard,
  };
  const rows = inMotion(frame, rowsBetween(frame, begin, end));
  const windFact = wind && windOver(wind, motion, rows);
  const { question, solved, doubt } = askedBy(windFact, held);
  const still = inStillAir(windFact?.trueAirspeed ?? null, held);
  const scale = exercise && scaleAt(exercise.fix.kind);
  const flown = exercise && asFlown(course, { ...found, inbound95 });
  const needle = scale && { ...scale, otherCourse: flown?.otherCourse ?? false };
  const loneLap = exercise === null && found.alone;
  const first = times[0];
  const reached = first && firstPass(frame, found.entry, first, motion.time[found.span.start]!);
  const speed = speedFacts(
    windFact?.trueAirspeed ?? null,
    windFact?.trueAirspeed95 ?? null,
    heights && meanBetween(frame, frame.altitude, begin, end),
    standard,
  );
  const variation = exercise?.variation ?? modelVariation(course.origin, begin);

  const facts: HoldFacts = {
    fix: {
      ident: exercise?.fix.ident ?? null,
      latitude: course.origin.latitude,
      longitude: course.origin.longitude,
      doubt95Nm: exercise ? null : found.fix95,
    },
    inboundTrueDeg: course.azimuth,
    inboundMagneticDeg: exercise ? exercise.magnetic : magneticCourse(course.azimuth, variation),
    variation: { ...variation },
    inbound95Deg: exercise ? null : inbound95,
    turns,
    leg: held.leg,
    timing: standard.id,
    sure: exercise ? null : found.sure,
    maybeCircuit: exercise ? false : found.maybeCircuit,
    loneLap,
    asFlown: flown,
    entry: reached && !loneLap ? entryFacts(frame, found, reached, times, held) : null,
    scale: scale && { id: scale.id, label: scale.label, kind: scale.kind },
    legTime95S: legTime95(frame.time),
    legsUnseen: legsInSilence(frame, found, times.map(lapTimes)),
    laps: times.map((moments, i) => {
      const lap = lapFacts(frame, moments, held, exercise?.altitude ?? null, needle);
      return { ...lap, legOff: legOffOf({ leg: held.leg, timing: standard.id, solved }, lap, i) };
    }),
    // in a time that the brief gives, that time is the whole
    ...(reached && !loneLap && !exercise?.between ? { lapCut: lapsCut(frame, times, reached) } : {}),
    stillAir: still?.racetrack ?? null,
    solved,
    solvedDoubt: doubt,
    nonHoldingSide: nonHoldingSide(frame, sign(turns), afterEntry(found, times, begin), end),
    altitude: heights,
    speed,
    wind: windFact && windRecord(windFact),
    cannotTell: [...windReasons(windFact), ...heightReasons(heights), ...speedReasons(speed)],
  };
  return {
    facts,
    findings: findingsOf(
      facts,
      exercise !== null,
      found.turns,
      times.map((lap) => lastTrack(frame, lap)),
    ),
    series: {
      ...seriesOf(frame, found, times),
      solved: question && isSolved(solved) ? outlineOf(question, solved, course) : null,
      stillAir: still && outlineOf(still.question, still.racetrack, course),
    },
  };
}

/** The needle of an inbound course: a VOR's at a VOR, none at a beacon without one, 1 NM elsewhere. */
const scaleAt = (kind: PointKind): NeedleScale | null =>
  kind === "ndb" ? null : NEEDLE_SCALES[kind === "vor" ? "vor" : "rnav-1"];

/** A coarse log tells each end half an interval worse. Tuned: with this, 2 in 100 verdicts on the times of simulated legs were wrong, seeds 1 to 300. */
const LEG_TIME_95: Seconds = 2;
const legTime95 = (time: Float64Array): Seconds => Math.hypot(LEG_TIME_95, usualStep(time) / 2);

const lapTimes = ({ start, end, outboundTurn, inboundTurn }: LapMoments) => ({
  from: start.time,
  to: end?.time ?? inboundTurn?.to ?? outboundTurn.to,
});

const sign = (turns: TurnSide): 1 | -1 => (turns === "right" ? 1 : -1);

/** From the first lap's pass of the fix to the last pass, or to where the hold was left. */
function timeHeld(frame: HoldFrame, found: FoundHold, times: readonly LapMoments[]) {
  const rows = inFrame(frame, found.span);
  const left = frame.time[Math.max(rows.start, rows.end - 1)]!;
  return { begin: times[0]?.start.time ?? frame.time[rows.start]!, end: times.at(-1)?.end?.time ?? left };
}

/** A direct entry turns to the outbound leg from wherever it came: that turn belongs to the entry. */
function afterEntry({ entry }: FoundHold, times: readonly LapMoments[], begin: UtcMillis): UtcMillis {
  const direct = entry !== "teardrop" && entry !== "parallel";
  return direct ? (times[0]?.outboundTurn.to ?? begin) : begin;
}

const WIND_FACTS = ["corrections", "racetrack", "entryHeading", "bank"] as const;

function windReasons(wind: WindFact | null): HoldFacts["cannotTell"] {
  if (wind?.knowledge === "full") return [];
  const reason = wind?.knowledge === "along" ? "wind-along-only" : "wind-not-known";
  return WIND_FACTS.map((fact) => ({ fact, reason }));
}

const heightReasons = (heights: HoldFacts["altitude"]): HoldFacts["cannotTell"] =>
  heights ? [] : [{ fact: "altitude", reason: "no-height" }];

/** Where the doubt of the speed holds the limit, nobody can tell. */
function speedReasons(speed: HoldFacts["speed"]): HoldFacts["cannotTell"] {
  if (!speed || speed.mostKt === null) return [];
  const straddles = Math.abs(speed.indicatedKt - speed.mostKt) <= speed.doubt95Kt;
  return straddles ? [{ fact: "speedLimit", reason: "doubt-holds-limit" }] : [];
}

function seriesOf(frame: HoldFrame, found: FoundHold, times: readonly LapMoments[]) {
  const { start, end } = inFrame(frame, found.span);
  const time = frame.time.subarray(start, end);
  const lap = new Int8Array(end - start).fill(-1);
  times.forEach((t, i) => {
    const until = t.end?.time ?? frame.time[end - 1]! + 1;
    for (let k = 0; k < lap.length; k++) if (time[k]! >= t.start.time && time[k]! < until) lap[k] = i;
  });
  return {
    kind: "hold" as const,
    pathStart: found.span.start,
    timeMs: time,
    alongNm: frame.along.subarray(start, end),
    crossTrackNm: frame.across.subarray(start, end),
    trackTrueDeg: frame.track.subarray(start, end),
    headingTrueDeg: frame.heading.subarray(start, end),
    groundSpeedKt: frame.motion.groundSpeed.subarray(found.span.start, found.span.end),
    altitudeFt: frame.altitude.subarray(start, end),
    lap,
  };
}
