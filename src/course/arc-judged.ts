/** Which part of an arc is judged: from joining it to the turn off it. */
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Seconds } from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { ArcRows } from "./arc-rows.ts";

/** Joined: within the published limit of an arc (FAA-S-ACS-8C, V.A: 1 NM), the track so near to the tangent, for so long. Chosen as for courses, twice as wide, since an arc in straight pieces swings by 5 degrees. */
const JOINED_NM: NauticalMiles = 1;
const JOINED_TRACK: AngleSize = 20;
const JOINED_FOR: Seconds = 10;
/** ... without times, for so far. The same at 110 kt. */
const JOINED_OVER: NauticalMiles = 0.3;
/** A turn by this much leads onto an arc or off it. Chosen, as the matcher has it. */
const TURN: AngleSize = 40;
/** Off the tangent by this much for good, an arc has been left. Chosen: no correction is larger. */
const LEFT: AngleSize = 45;
/** ... or so far off its radius. Chosen, as far as the matcher follows it. */
const LEFT_NM: NauticalMiles = 6;

/** From so far off, a track that leads back to the arc for so long after a turn was a cut back to it, and no part of the turn off it. Chosen: a turn off in two pieces pauses for less. */
const CUT_BACK_NM: NauticalMiles = 0.3;
const CUT_BACK_FOR: Seconds = 20;

export interface ArcJudged {
  readonly span: Span;
  readonly begins: "joined" | "start-of-match";
  readonly ends: "turn-off" | "end-of-arc" | "end-of-match";
  readonly joinedAt: number | null;
  /** Rows of the arc's own, not cut to the exercise's: a turn may begin before it or end after it. */
  readonly turnIn: Leg | null;
  readonly turnOff: Leg | null;
}

/** At least two rows. Legs are those of the whole flight; empty where the log has no times. */
export function judgedArc(rows: ArcRows, legs: readonly Leg[], sweep: number): ArcJudged {
  const joinedAt = joinedRow(rows);
  const first = joinedAt ?? 0;
  const row = (pathRow: number) => pathRow - rows.pathStart;
  const turns = legs.filter((leg) => leg.kind === "turn" && Math.abs(leg.turn) >= TURN);
  // the last row that lies along the arc
  let along = rows.length - 1;
  while (along > first && !lies(along)) along--;
  function lies(i: number): boolean {
    return Math.abs(rows.trackErrorDeg[i]!) <= LEFT && Math.abs(rows.deviationNm[i]!) <= LEFT_NM;
  }
  const lastTurn =
    turns.findLast(({ span }) => row(span.start) > (first + along) / 2 && row(span.start) <= along + 1) ??
    null;
  const turnOff = lastTurn && leavingTurn(rows, legs, lastTurn);
  // of several turns before joining, as after an overshoot, the largest is the one onto the arc
  const turnIn = turns
    .filter(({ span }) => row(span.end) > 0 && row(span.start) < Math.max(first, 1))
    .reduce<Leg | null>((a, b) => (a && Math.abs(a.turn) >= Math.abs(b.turn) ? a : b), null);
  let end = turnOff ? row(turnOff.span.start) + 1 : along + 1;
  let ends: ArcJudged["ends"] = turnOff ? "turn-off" : "end-of-match";
  if (!turnOff) {
    const over = rows.goneDeg.findIndex((gone, i) => i > first && gone > sweep);
    if (over > 0 && over < end) {
      end = over + 1;
      ends = "end-of-arc";
    }
  }
  // a small arc may be one turn with the turns onto it and off it
  const start =
    joinedAt !== null && turnIn ? Math.max(joinedAt, Math.min(row(turnIn.span.end), end - 2)) : first;
  const span = { start: Math.max(0, Math.min(start, end - 2)), end: Math.max(2, Math.min(end, rows.length)) };
  const begins = joinedAt === null ? "start-of-match" : "joined";
  return { span, begins, ends, joinedAt, turnIn, turnOff };
}

/** The turn that left the arc: the first of those up to one between which the track never came back along it, flown in several to one side or in one. */
function leavingTurn(rows: ArcRows, legs: readonly Leg[], last: Leg): Leg {
  let whole = last;
  for (let k = legs.indexOf(last) - 1; k >= 0; k--) {
    const leg = legs[k]!;
    const [from, to] = [leg.span.end - rows.pathStart, whole.span.start - rows.pathStart];
    if (from < 1) break;
    const between = rows.trackErrorDeg.subarray(from - 1, Math.max(from, to));
    if (between.some((error) => Math.abs(error) <= JOINED_TRACK)) break;
    if (cutsBack(rows, from, to)) break;
    if (leg.kind !== "turn") continue;
    const sameSide = Math.sign(leg.turn) === Math.sign(whole.turn);
    if (sameSide)
      whole = { ...leg, span: { start: leg.span.start, end: whole.span.end }, turn: leg.turn + whole.turn };
    else if (Math.abs(leg.turn) >= TURN) whole = leg;
  }
  return whole;
}

/** Whether the rows between two turns lead back to the arc that the aircraft was off, for a while. */
function cutsBack(rows: ArcRows, from: number, to: number): boolean {
  if (to >= rows.length || rows.timeMs[to]! - rows.timeMs[from]! < CUT_BACK_FOR * 1000) return false;
  for (let i = from; i < to; i++) {
    const error = rows.trackErrorDeg[i]!;
    if (Math.abs(error) > LEFT || error * rows.crossTrackNm[i]! > 0) return false;
  }
  return Math.abs(rows.deviationNm[from]!) >= CUT_BACK_NM;
}

function joinedRow(rows: ArcRows): number | null {
  let since = -1;
  for (let i = 0; i < rows.length; i++) {
    const on =
      Math.abs(rows.deviationNm[i]!) <= JOINED_NM && Math.abs(rows.trackErrorDeg[i]!) <= JOINED_TRACK;
    if (!on) since = -1;
    else {
      if (since < 0 || rows.gapBefore[i]) since = i;
      const long = rows.timed
        ? rows.timeMs[i]! - rows.timeMs[since]! >= JOINED_FOR * 1000
        : rows.flownNm[i]! - rows.flownNm[since]! >= JOINED_OVER;
      if (long) return since;
    }
  }
  return null;
}
