/** A course reversal onto the final, 45/180 or 80/260: found among the turns before it, timed and measured. */
import type { ApproachExercise } from "../brief/brief.ts";
import { inverse, measureColumns } from "../geodesy/index.ts";
import { direction, turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { longestSilence, silencesOf } from "../quantity/silence.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, DegreesPerSecond, NauticalMiles, Seconds } from "../quantity/units.ts";
import { PROCEDURE_TURN } from "../standard/procedure-turn.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { ApproachFacts } from "./facts.ts";
import { onFinal } from "./guidance.ts";

/** The first turn away and the turn back the other way: by so much. Chosen: a third to either side of what is taught. */
const AWAY: readonly [AngleSize, AngleSize] = [28, 110];
const BACK: readonly [AngleSize, AngleSize] = [130, 300];
/** Half-way between 45 and 80, and between 180 and 260. */
const STEEP_AWAY: AngleSize = 62;
/** So far apart at the most. Chosen: twice the minute that is taught. */
const BETWEEN: Seconds = 130;
/** Outbound before it, inbound after it, by so much of the final course. Chosen: a 45° leg, a wind correction. */
const OUTBOUND: AngleSize = 120;
const INBOUND: AngleSize = 65;
/** The turn back ends so long before the final is matched, at the earliest. Chosen: an intercept. */
const BEFORE_MATCH: Seconds = 240;
/** The turn back is over where it slows to this, short of all round by so much at the most: the turn onto the final may follow at once. Chosen: under half of standard rate. */
const ROLLED_OUT: DegreesPerSecond = 1.2;
const SHORT: AngleSize = 40;
/** No farther from the final than this. Chosen: half of a usual distance limit. */
const BESIDE: NauticalMiles = 6;

export interface ProcedureTurn {
  readonly away: Leg;
  /** Up to its roll-out. */
  readonly back: Leg;
  /** First row of the leg outbound, and whether that is the passage of the final fix. */
  readonly outboundStart: number;
  readonly overFix: boolean;
}

/** The reversal that leads onto the final matched in `span`; null where there is none. */
export function findProcedureTurn(
  exercise: ApproachExercise,
  span: Span,
  motion: Motion,
  legs: readonly Leg[],
): ProcedureTurn | null {
  const seconds = (from: number, to: number) => (motion.time[to]! - motion.time[from]!) / 1000;
  const error = (row: number) => Math.abs(turnFrom(exercise.course.azimuth, motion.trackAngle[row]!));
  const turns = legs.filter((leg) => leg.kind === "turn");
  for (let i = 1; i < turns.length; i++) {
    const away = turns[i - 1]!;
    const back = upToRollOut(turns[i]!, Math.abs(away.turn) > STEEP_AWAY ? 260 : 180, motion);
    const end = back.span.end - 1;
    const led = end < span.end && seconds(end, span.start) < BEFORE_MATCH;
    if (!led || Math.sign(away.turn) === Math.sign(back.turn)) continue;
    if (!within(away.turn, AWAY) || !within(back.turn, BACK)) continue;
    if (seconds(away.span.end - 1, back.span.start) > BETWEEN) continue;
    if (error(away.span.start) < OUTBOUND || error(end) > INBOUND) continue;
    const at = onFinal(exercise, { latitude: motion.latitude[end]!, longitude: motion.longitude[end]! });
    if (at.before <= 0 || Math.abs(at.aside) > BESIDE) continue;
    return { away, back, ...outboundOf(exercise, motion, away.span.start, error) };
  }
  return null;
}

function upToRollOut(turn: Leg, whole: AngleSize, motion: Motion): Leg {
  const { start, end } = turn.span;
  let turned = 0;
  for (let row = start + 1; row < end; row++) {
    turned += turnFrom(motion.trackAngle[row - 1]!, motion.trackAngle[row]!);
    if (Math.abs(turned) < whole - SHORT || Math.abs(motion.turnRate[row]!) > ROLLED_OUT) continue;
    return { ...turn, span: { start, end: row + 1 }, turn: turned };
  }
  return turn;
}

const within = (turn: number, [least, most]: readonly [AngleSize, AngleSize]): boolean =>
  Math.abs(turn) >= least && Math.abs(turn) <= most;

function outboundOf(
  exercise: ApproachExercise,
  motion: Motion,
  turned: number,
  error: (row: number) => number,
): Pick<ProcedureTurn, "outboundStart" | "overFix"> {
  let start = turned;
  while (start > 0 && error(start - 1) > OUTBOUND) start--;
  const fix = exercise.finalFix && onFinal(exercise, exercise.finalFix).before;
  if (fix === null) return { outboundStart: start, overFix: false };
  const { along } = measureColumns(
    exercise.course,
    motion.latitude.subarray(start, turned + 1),
    motion.longitude.subarray(start, turned + 1),
  );
  const before = along.map((m) => -nauticalMilesFromMetres(m));
  const passed = before.findIndex((distance) => distance >= fix);
  return passed > 0
    ? { outboundStart: start + passed, overFix: true }
    : { outboundStart: start, overFix: false };
}

export function procedureTurnFacts(
  exercise: ApproachExercise,
  motion: Motion,
  { away, back, outboundStart, overFix }: ProcedureTurn,
): NonNullable<ApproachFacts["procedureTurn"]> {
  const { finalFix, runway, course } = exercise;
  const from = finalFix ?? runway.threshold;
  const utc = (row: number) => utcText(motion.time[row]!);
  const seconds = (a: number, b: number): Seconds => (motion.time[b]! - motion.time[a]!) / 1000;
  const place = (row: number) => ({ latitude: motion.latitude[row]!, longitude: motion.longitude[row]! });
  const end = back.span.end - 1;
  let farthest = 0;
  for (let i = outboundStart; i <= end; i++)
    farthest = Math.max(farthest, nauticalMilesFromMetres(inverse(from, place(i)).distance));
  const rollOut = onFinal(exercise, place(end));
  const steep = Math.abs(away.turn) > STEEP_AWAY;
  const middle = (away.span.end + back.span.start) >> 1;
  const clock = motion.time.map((ms) => (ms - motion.time[0]!) / 1000);
  const silentS = longestSilence(silencesOf(clock), outboundStart, back.span.end);
  return {
    kind: steep ? "80/260" : "45/180",
    side: away.turn > 0 ? "right" : "left",
    outboundUtc: utc(outboundStart),
    outboundFrom: overFix ? "final-fix" : "turned-outbound",
    outboundS: seconds(outboundStart, away.span.start),
    awayUtc: utc(away.span.start),
    awayTurnDeg: away.turn,
    awayTrackTrueDeg: steep ? null : direction(motion.trackAngle[middle]!),
    awayS: steep ? null : seconds(away.span.end - 1, back.span.start),
    backTurnDeg: back.turn,
    farthestNm: farthest,
    farthestFrom: finalFix?.ident ?? "threshold",
    limitNm: PROCEDURE_TURN.within,
    ...(silentS > 0 ? { silentS } : {}),
    rollOut: {
      utc: utc(end),
      trackErrorDeg: turnFrom(course.azimuth, motion.trackAngle[end]!),
      crossTrackNm: rollOut.aside,
      distanceNm: rollOut.before,
    },
  };
}
