/** Why an excursion happened, from facts alone, and the share of it that each cause explains. */
import { type Cause, type ExcursionRecord, seenOf } from "../quantity/excursion-record.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Knots, Seconds, Share, TurnDegrees } from "../quantity/units.ts";
import { weigh } from "../quantity/weigh.ts";
import type { AlongLine, ExcursionRows } from "./excursion.ts";
import type { Joining } from "./joining.ts";
import type { Reversals } from "./reversal.ts";

/** The heading was on the course, not into the wind, when within this of it. Tuned against hand-flown wander. */
const ON_THE_COURSE: AngleSize = 2;
/** A need smaller than this is not worth a cause. Tuned: the threshold of the track error. */
const LEAST_NEED: AngleSize = 3;
/** Over-corrected: beyond the need by more than half; turned downwind, and not merely left on the course: away from it by more than half of it. */
const BEYOND: Share = 0.5;
/** A track error is that of the roll-out when it stands so soon after it, and has changed by no more than this. Tuned on simulated roll-outs. */
const SINCE_ROLL_OUT: Seconds = 30;
const SAME_TRACK: AngleSize = 4;
/** ... and was off to that side when the turn ended, by the threshold of the track error. Tuned likewise. */
const LEAST_ROLL_OUT: AngleSize = 3;
/** ... and stood, by half of it, in so many means over so long each. Tuned likewise. */
const STOOD = 3;
const MEAN_OVER: Seconds = 10;
/** A share under this is none. Chosen: what is said is told in quarters. */
const LEAST_SHARE: Share = 0.1;

/** Heading less line over some rows, right positive, where the wind is known in full. */
export interface Correction {
  readonly flown: TurnDegrees;
  /** What this wind needed. */
  readonly needed: TurnDegrees;
  /** Half-width of the 95 % interval of `needed`. */
  readonly doubt95: AngleSize;
  /** Wind to the right of the line. */
  readonly across: Knots;
  readonly across95: Knots;
}

/** An excursion whose record tells why. */
export interface CausedExcursion extends ExcursionRows {
  readonly record: ExcursionRecord & { readonly causes: Cause[] };
}

type WindCause = "wind-uncorrected" | "under-corrected" | "over-corrected" | "corrected-wrong-way";

/**
 * Null where the wind's need is small, or within its own doubt, or does not explain the side that the aircraft went
 * to. Flown and needed correction carry the same error of the wind, so their difference is known better than either.
 */
export function windCause(
  { side }: Pick<ExcursionRecord, "side">,
  m: Pick<Correction, "flown" | "needed" | "doubt95">,
): WindCause | null {
  const size = Math.abs(m.needed);
  if (!(size >= LEAST_NEED && size >= m.doubt95)) return null;
  const downwind = (side === "right" ? 1 : -1) === -Math.sign(m.needed);
  /** Of the need, in the needed direction. */
  const applied = (m.flown * Math.sign(m.needed)) / size;
  if (!downwind) return applied > 1 + BEYOND ? "over-corrected" : null;
  if (Math.abs(m.flown) <= ON_THE_COURSE) return "wind-uncorrected";
  // within its doubt of the line the nose cannot be said to be turned downwind
  const turned = applied < -BEYOND && -m.flown * Math.sign(m.needed) > m.doubt95;
  if (applied < 0) return turned ? "corrected-wrong-way" : "wind-uncorrected";
  return applied < 1 ? "under-corrected" : null;
}

/** The need lies within its own doubt, and may be one that explains it. */
const unknowable = ({ needed, doubt95 }: Correction): boolean =>
  Math.abs(needed) < doubt95 && Math.abs(needed) + doubt95 >= LEAST_NEED;

/** Each cause of an excursion as a finding, with the values that it rests on and its share. */
export function causeFindings({ record }: CausedExcursion, m: Correction | null): Finding[] {
  const { side, trackErrorDeg, causes } = record;
  const evidence = seenOf(record);
  const wind = m && {
    flownDeg: m.flown,
    neededDeg: m.needed,
    doubt95Deg: m.doubt95,
    windAcrossKt: m.across,
    windAcross95Kt: m.across95,
  };
  // a chase and a turn are findings of their own
  const own = (cause: Cause["cause"]) => cause === "chased" || /^turned/.test(cause);
  return causes
    .filter(({ cause }) => !own(cause))
    .map(({ cause, share }) => ({
      code: cause,
      facts: { side, degrees: Math.abs(trackErrorDeg), share, ...wind },
      evidence,
    }));
}

/** What the causes of an excursion are read from. */
export interface CausesFrom {
  readonly rows: AlongLine;
  readonly joining: Joining | null;
  /** Null where the needle was not chased. */
  readonly chased: Reversals | null;
  /** Correction over the drifting rows; null where the wind is not known. */
  readonly correction: Correction | null;
}

/**
 * Causes with the share of the worst distance that each explains, the largest first; the shares add up to 1.
 *
 * What was there when the turn onto the line ended is that turn's, early or late; what came after has one cause. With
 * the wind unknown only turns and swings can be told.
 */
export function causesOf(excursion: ExcursionRows, from: CausesFrom): Cause[] {
  const { rows, joining, chased } = from;
  const { drifting, worst, record } = excursion;
  if (chased && drifting.start >= chased.from && drifting.start <= chased.to)
    return [{ cause: "chased", share: 1 }];
  const side = record.side === "right" ? 1 : -1;
  const size = rows.crossTrackNm[worst]! * side;
  const rolledOut = joining !== null && sinceRollOut(rows, drifting, side, joining);
  const before = rolledOut ? Math.max(0, Math.min(size, joining.crossTrackNm * side)) : 0;
  const turn = size > 0 ? before / size : 0;
  const rest: Cause = { cause: drifted(excursion, from, rolledOut), share: 1 - turn };
  const turned = joining?.turned;
  const all: Cause[] = turned ? [{ cause: turned, share: turn }, rest] : [rest];
  const told = all.filter(({ share }) => share >= LEAST_SHARE);
  const sum = told.reduce((a, { share }) => a + share, 0);
  return told.map((c) => ({ ...c, share: c.share / sum })).sort((a, b) => b.share - a.share);
}

/** Causes of the worst that went wrong on a course: the chase, else the farthest of the excursions and of a turn that ended off the course. */
export function worstCauses(
  excursions: readonly CausedExcursion[],
  joining: Joining | null,
  chased: Reversals | null,
): Cause[] {
  if (chased) return [{ cause: "chased", share: 1 }];
  const worst = excursions.reduce<CausedExcursion["record"] | null>(
    (a, { record: b }) => (a && Math.abs(a.worstCrossTrackNm) >= Math.abs(b.worstCrossTrackNm) ? a : b),
    null,
  );
  const turned = joining?.turned ?? null;
  if (turned && Math.abs(joining!.crossTrackNm) >= Math.abs(worst?.worstCrossTrackNm ?? 0))
    return [{ cause: turned, share: 1 }];
  return worst?.causes ?? [];
}

/** Why the track stood off, apart from where the turn ended. */
function drifted({ record }: ExcursionRows, { correction }: CausesFrom, rolledOut: boolean): Cause["cause"] {
  const wind = correction && windCause(record, correction);
  // rolled out onto the course's own number in a crosswind: of two true names the wind's tells what to do
  const onTheCourse = wind === "wind-uncorrected" && Math.abs(correction!.flown) <= ON_THE_COURSE;
  if (rolledOut && !onTheCourse) return "rolled-out-off";
  if (!correction || unknowable(correction)) return "cannot-tell";
  return wind ?? "heading-off";
}

/** `side`: +1 right. A turn that ended along the line ended well, and so did one whose rest a soft return turned away. */
function sinceRollOut(rows: AlongLine, drifting: Span, side: number, joining: Joining): boolean {
  const { start } = drifting;
  const off = joining.trackErrorDeg * side;
  const late = (rows.timeMs[start]! - joining.time) / 1000;
  if (off < LEAST_ROLL_OUT || late > SINCE_ROLL_OUT) return false;
  for (let from = start, k = 0; k < STOOD && from < drifting.end; k++) {
    let end = from + 1;
    while (end < rows.length && rows.timeMs[end]! - rows.timeMs[from]! <= MEAN_OVER * 1000) end++;
    const { mean } = weigh(rows.trackErrorDeg, { start: from, end }, new Float64Array(end - from).fill(1));
    if (k === 0 && Math.abs(mean * side - off) > SAME_TRACK) return false;
    if (mean * side < off / 2) return false;
    from = end;
  }
  return true;
}
