/** One lap as flown: its legs by the clock, the corrections held on them, its turns, where it rolled out. */
import { utcText } from "../quantity/time.ts";
import type { FeetMsl, Seconds, UtcMillis } from "../quantity/units.ts";
import { windOver, windRecord } from "../wind/index.ts";
import { askedBy, type Held } from "./asked.ts";
import { LONGEST_BRIDGED } from "./bridged.ts";
import { directionOfLeg, factorOfNeed, needOver } from "./correction.ts";
import type { HoldLap } from "./facts.ts";
import type { FoundLap } from "./found.ts";
import {
  across95At,
  directionAt,
  distanceBetween,
  type HoldFrame,
  inFrame,
  inMotion,
  meanBetween,
  meanDirection,
  offInbound,
  rowsBetween,
  valueAt,
} from "./frame.ts";
import { heightBetween } from "./height.ts";
import { rollOutUnseen, silenceOfLeg } from "./leg-silence.ts";
import { abeamOutbound, type Pass, passOfFix } from "./pass.ts";
import { factorOf } from "./racetrack.ts";
import { type InboundNeedle, trackingOf } from "./tracking.ts";
import { endedOn, measureTurn, type TurnFlown } from "./turn.ts";

/** The moments of a lap. */
export interface LapMoments {
  readonly start: Pass;
  readonly outboundTurn: TurnFlown;
  /** Null where the hold was left before. */
  readonly inboundTurn: TurnFlown | null;
  /** The fix again. */
  readonly end: Pass | null;
  readonly abeam: UtcMillis | null;
}

/** Looked at for a pass of the fix before the first outbound turn, and after the last inbound leg. */
const BEFORE_TURN: Seconds = 60;

/** A lap that begins later than this after the one before was flown after a silence. Chosen. */
const SAME_PASS_MS = 30_000;

/** The moments of each lap whose outbound turn can be told. */
export function timesOf(frame: HoldFrame, laps: readonly FoundLap[]): LapMoments[] {
  const turned = laps.flatMap((lap) => {
    const outboundTurn = measureTurn(frame, inFrame(frame, lap.outboundTurn), frame.side);
    const back = measureTurn(frame, inFrame(frame, lap.inboundTurn), frame.side);
    const inboundTurn = back && endedOn(frame, back, frame.side, needOver(frame, back));
    return outboundTurn ? [{ lap, outboundTurn, inboundTurn }] : [];
  });
  const starts = turned.map(({ outboundTurn: { from, to } }, i) => {
    const before = turned[i - 1]?.inboundTurn?.to ?? from - BEFORE_TURN * 1000;
    return passOfFix(frame, Math.min(before, from), (from + to) / 2, from);
  });
  return turned.map(({ lap, outboundTurn, inboundTurn }, i): LapMoments => {
    const start = starts[i]!;
    const beyond = inFrame(frame, lap.inbound).end;
    const left = frame.time[beyond - 1] ?? 0;
    // where a short silence follows, the fix may be passed in it
    const seen = Math.min(frame.time[beyond] ?? left, left + LONGEST_BRIDGED * 1000);
    const next = turned[i + 1];
    const follows = next && next.lap.times.start - lap.times.end < SAME_PASS_MS;
    const end =
      (follows ? starts[i + 1] : null) ??
      (lap.complete && inboundTurn
        ? passOfFix(frame, inboundTurn.to, Math.max(left + 20_000, seen), left)
        : null);
    const out = inboundTurn?.from ?? left;
    return { start, outboundTurn, inboundTurn, end, abeam: abeamOutbound(frame, start.time, out) };
  });
}

/** Flown along the inbound course: so near to it, and so nearly in its direction, for so long. Chosen: wide against a tidy leg, narrow against a cut back to it. */
const ALONG_WITHIN_NM = 0.2;
const ALONG_WITHIN_DEG = 10;
const ALONG_FOR: Seconds = 10;

/** The last stretch of the inbound leg that was flown along the course, from its first row on; null where there is none. */
function alongCourse(frame: HoldFrame, from: UtcMillis, to: UtcMillis): UtcMillis | null {
  const { start, end } = rowsBetween(frame, from, to);
  let first = end;
  for (let i = end - 1; i >= start; i--) {
    const near = Math.abs(frame.across[i]!) <= ALONG_WITHIN_NM;
    if (!near || Math.abs(offInbound(frame, frame.track[i]!)) > ALONG_WITHIN_DEG) break;
    first = i;
  }
  const since = first < end ? frame.time[first]! : to;
  return to - since >= ALONG_FOR * 1000 ? since : null;
}

/** From the end of the inbound turn to the fix, from when on along the course, and on what track: of that stretch, where there is one. */
export function wayBack(frame: HoldFrame, { inboundTurn, end }: Pick<LapMoments, "inboundTurn" | "end">) {
  if (!inboundTurn || !end || !(end.time > inboundTurn.to)) return null;
  const [from, to] = [inboundTurn.to, end.time];
  const along = alongCourse(frame, from, to);
  return { from, to, along, track: meanDirection(frame, frame.track, along ?? from, to) };
}

function turnRecord(turn: TurnFlown) {
  return { rateDegS: turn.rate, bankDeg: turn.bank, seconds: turn.seconds };
}

/** How far past the inbound course, coming from the side of the racetrack, from the turn until it was back. */
function overshoot(frame: HoldFrame, turn: TurnFlown, until: UtcMillis): number {
  const { start, end } = rowsBetween(frame, (turn.from + turn.to) / 2, until);
  let most = 0;
  for (let i = start; i < end; i++) {
    const past = -frame.side * frame.across[i]!;
    if (past <= 0 && frame.time[i]! >= turn.to) break;
    most = Math.max(most, past);
  }
  return most;
}

export function lapFacts(
  frame: HoldFrame,
  times: LapMoments,
  held: Held,
  target: FeetMsl | null,
  scale: InboundNeedle | null,
): Omit<HoldLap, "legOff"> {
  const { start, outboundTurn, inboundTurn, end, abeam } = times;
  const { inbound, inbound95 } = held;
  const level = outboundTurn.to;
  const late = abeam !== null && abeam > level;
  const from = late ? abeam : level;
  const to = Math.max(from, inboundTurn?.from ?? level);
  const lapEnd = end?.time ?? inboundTurn?.to ?? to;
  const lapRows = inMotion(frame, rowsBetween(frame, start.time, lapEnd));
  const wind = frame.wind && lapRows.end > lapRows.start ? windOver(frame.wind, frame.motion, lapRows) : null;
  const { solved, doubt, rules } = askedBy(wind, held);
  const outbound = directionOfLeg(frame, inbound + 180, inbound95, Math.min(level, to), to);
  const back = wayBack(frame, times);
  const along = back?.along ?? null;
  const inboundLeg = back && directionOfLeg(frame, inbound, inbound95, along ?? back.from, back.to);
  const unseen = inboundTurn && rollOutUnseen(frame, inboundTurn.to);
  const need = factorOfNeed(outbound, wind, inbound, inbound95);
  return {
    startUtc: utcText(start.time),
    endUtc: end && utcText(end.time),
    fixAcrossNm: start.across,
    outbound: {
      fromUtc: utcText(from),
      toUtc: utcText(to),
      seconds: (to - from) / 1000,
      begins: late ? "abeam" : "wings-level",
      fromAbeamS: abeam === null ? null : (to - abeam) / 1000,
      betweenTurnsS: Math.max(0, to - level) / 1000,
      lengthNm: distanceBetween(frame, from, to),
      ...outbound,
      endAlongNm: valueAt(frame, frame.along, to),
      endAcrossNm: valueAt(frame, frame.across, to),
      endDistanceNm: Math.hypot(valueAt(frame, frame.along, to), valueAt(frame, frame.across, to)),
      ...silenceOfLeg(frame, abeam === null ? [level] : [abeam, level], to),
    },
    inbound: inboundLeg && {
      fromUtc: utcText(back.from),
      toUtc: utcText(back.to),
      seconds: (back.to - back.from) / 1000,
      lengthNm: distanceBetween(frame, back.from, back.to),
      ...inboundLeg,
      ...silenceOfLeg(frame, [back.from], back.to),
      // a cut back to the course is no wind correction
      ...(along === null ? { correctionDeg: null, correction95Deg: null } : {}),
    },
    factor:
      along === null || !inboundLeg || inboundLeg.correctionDeg === null || outbound.correctionDeg === null
        ? null
        : factorOf(outbound.correctionDeg, inboundLeg.correctionDeg),
    factorOfNeed: need?.factor ?? null,
    factorOfNeed95: need?.doubt95 ?? null,
    turns: { outbound: turnRecord(outboundTurn), inbound: inboundTurn && turnRecord(inboundTurn) },
    rollOut: inboundTurn && {
      utc: utcText(inboundTurn.to),
      alongNm: valueAt(frame, frame.along, inboundTurn.to),
      acrossNm: valueAt(frame, frame.across, inboundTurn.to),
      across95Nm: across95At(frame, inboundTurn.to) + (unseen?.acrossNm ?? 0),
      ...(unseen ? { silentS: unseen.seconds } : {}),
      trackErrorDeg: offInbound(frame, directionAt(frame, frame.track, inboundTurn.to)),
      overshootNm: overshoot(frame, inboundTurn, lapEnd),
    },
    ...trackingOf(frame, scale, back),
    altitude: heightBetween(frame, start.time, lapEnd, target),
    groundSpeedKt: meanBetween(
      frame,
      frame.motion.groundSpeed.subarray(frame.start, frame.start + frame.length),
      start.time,
      lapEnd,
    ),
    wind: wind && windRecord(wind),
    solved,
    doubt,
    rules,
  };
}
