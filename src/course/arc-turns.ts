/** The turns onto an arc and off it: when they began, when they should have, and where they ended. */
import type { ArcExercise } from "../brief/brief.ts";
import { courseThrough, measureColumns } from "../geodesy/index.ts";
import { cosDeg, direction, turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import { silencesOf } from "../quantity/silence.ts";
import { firstAtOrAfter, type Span, spanLength } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { DegreesPerSecond, Seconds, TrueDegrees } from "../quantity/units.ts";
import { HOLDING } from "../standard/holding.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { ArcFacts } from "./arc-facts.ts";
import { inFrame, leadOffArc, leadOntoArc, type TurnThroughAir } from "./arc-lead.ts";
import { measureArcRows, sideOf, sweepOf } from "./arc-rows.ts";
import type { CoursePath } from "./path.ts";

const STANDARD_RATE: DegreesPerSecond = HOLDING.us.turnRate;

interface Flown {
  readonly exercise: ArcExercise;
  readonly path: CoursePath;
  readonly motion: Motion;
  readonly wind: WindEstimate | null;
}

/** What the air did at the middle of a turn, in the frame of a radial; the ground speed at its start where the wind is not known throughout. */
function throughAir(
  { motion, wind, exercise }: Flown,
  { span, turn: turnOfTrack }: Leg,
  radial: TrueDegrees,
): { readonly turn: TurnThroughAir; readonly windUsed: boolean } {
  const seconds = (motion.time[span.end - 1]! - motion.time[span.start]!) / 1000;
  const middle = (span.start + span.end) >> 1;
  const air = wind?.alongFlight;
  const known =
    air !== undefined && [span.start, middle, span.end - 1].every((row) => air.knowledge[row] === "full");
  const drift = (row: number) => (known ? turnFrom(air.heading[row]!, motion.trackAngle[row]!) : 0);
  const noseTurn = turnOfTrack - (drift(span.end - 1) - drift(span.start));
  const rate = Math.abs(noseTurn) / Math.max(1, seconds);
  if (!known) {
    return {
      turn: { rate, trueAirspeed: motion.groundSpeed[span.start]!, air: { along: 0, across: 0 } },
      windUsed: false,
    };
  }
  const blown = inFrame(air.airEast[middle]!, air.airNorth[middle]!, radial, sideOf(exercise));
  return { turn: { rate, trueAirspeed: air.trueAirspeed[middle]!, air: blown }, windUsed: true };
}

/** Smoothing moves an end of a turn that lies so near to a silence. As of the legs of holds. */
const BESIDE: Seconds = 3;

/** Whether the log is silent in a turn or beside it: then where it began and ended is not seen. */
export function turnUnseen({ time }: Motion, { span }: Leg): boolean {
  const seconds = time.map((ms) => (ms - time[0]!) / 1000);
  const silentBefore = silencesOf(seconds);
  const [from, to] = [seconds[span.start]! - BESIDE, seconds[span.end - 1]! + BESIDE];
  for (let i = Math.max(1, firstAtOrAfter(seconds, from)); i < seconds.length && seconds[i - 1]! <= to; i++)
    if (silentBefore(i) !== null) return true;
  return false;
}

const rowsAt = ({ exercise, path, motion, wind }: Flown, span: Span) =>
  measureArcRows(exercise, path, span, motion, wind);

/** Null where the log has one point of the turn, or is silent in it: that tells neither its rate nor where it began. */
export function turnInFacts(flown: Flown, leg: Leg): ArcFacts["turnIn"] {
  const { exercise, motion } = flown;
  const { start, end } = leg.span;
  if (spanLength(leg.span) < 2 || turnUnseen(motion, leg)) return null;
  const rows = rowsAt(flown, leg.span);
  const radial = rows.radialDeg[0]!;
  const side = sideOf(exercise);
  // the track in the frame of the arc: 0 outward, growing the way it goes round
  const track = side * turnFrom(rows.courseAtFootDeg[0]!, motion.trackAngle[start]!) + 90;
  const closing = cosDeg(track);
  const { turn } = throughAir(flown, leg, radial);
  const off = rows.deviationNm[0]!;
  return {
    utc: utcText(motion.time[start]!),
    turnDeg: leg.turn,
    rateDegS: turn.rate,
    leadNm: Math.abs(closing) < 0.2 ? 0 : -off / closing,
    neededNm: leadOntoArc(exercise.radius, track, turn),
    rollOutNm: rows.deviationNm[end - 1 - start]!,
  };
}

/** The turn off the arc; null likewise. `standardRateDeg` and what it rests on serve the remedy too. */
export function turnOffFacts(flown: Flown, leg: Leg): ArcFacts["turnOff"] {
  const { exercise, motion, path } = flown;
  const { start, end } = leg.span;
  if (spanLength(leg.span) < 2 || turnUnseen(motion, leg)) return null;
  const side = sideOf(exercise);
  const rows = rowsAt(flown, leg.span);
  const radial = rows.radialDeg[0]!;
  const to = Math.sign(leg.turn) === side ? "inbound" : "outbound";
  const { turn, windUsed } = throughAir(flown, leg, exercise.toRadial);
  const course = courseThrough(exercise.fix, to === "inbound" ? exercise.toRadial + 180 : exercise.toRadial);
  const over = end - 1;
  const { across } = measureColumns(
    course,
    path.latitude.subarray(over, over + 1),
    path.longitude.subarray(over, over + 1),
  );
  return {
    utc: utcText(motion.time[start]!),
    turnDeg: leg.turn,
    rateDegS: turn.rate,
    to,
    radialTrueDeg: direction(radial),
    radialMagneticDeg: magneticCourse(radial, exercise.variation),
    leadDeg: sweepOf(exercise) - rows.goneDeg[0]!,
    neededDeg: leadOffArc(exercise.radius, to, turn),
    standardRateDeg: leadOffArc(exercise.radius, to, { ...turn, rate: STANDARD_RATE }),
    windUsed,
    rollOutUtc: utcText(motion.time[over]!),
    rollOutCrossTrackNm: nauticalMilesFromMetres(across[0]!),
  };
}
