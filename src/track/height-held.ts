/** From where a briefed height was held: who begins an exercise still climbing or descending to it has not lost it. */
import type { HeightReached } from "../quantity/height-record.ts";
import { silenceLimit, stepsOf } from "../quantity/silence.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet, FeetMsl, Seconds } from "../quantity/units.ts";
import { altimeterDoubt95 } from "./height-doubt.ts";
import type { Column } from "./track.ts";

/** Held: within so much from the lowest to the highest, for so long. Chosen: under 200 ft/min, the slowest of climbs. */
const HELD: Level = { within: 100, seconds: 30 };
/** Level for so long elsewhere it was no step of a climb, but flown at another height. Chosen. */
const ELSEWHERE: Level = { within: 150, seconds: 60 };
/** Twice the limit of a height held (FAA-S-ACS-8C: 100 ft): held nearer than this, by the log and what an altimeter may have shown more or less, it was the briefed one that was meant. */
const MEANT: Feet = 200;
/** ... but never farther: half way to the next level that is flown. Common practice, no source. */
const MEANT_MOST: Feet = 500;
/** Farther off than this at the beginning, it was on its way. Chosen: as above. */
const AWAY: Feet = 200;
/** Arrived: the last of a climb is soft. Chosen: twice a hand-flown wander of 20 ft. */
const ARRIVED: Feet = 40;
/** Nearly all of it one way, it was climbed or descended on purpose. Chosen. */
const ONE_WAY = 0.8;
/** ... where no height was briefed, by so much. Chosen: five times the limit of a height held. */
const ON_PURPOSE: Feet = 500;

interface Level {
  readonly within: Feet;
  readonly seconds: Seconds;
}

type Way = HeightReached["way"];

export interface HeightHeld {
  /** The first row that is judged. */
  readonly row: number;
  /** How it came to the height before that row; null where it was there from the beginning. */
  readonly onWay: {
    readonly way: Way;
    readonly from: FeetMsl;
    readonly seconds: Seconds;
    /** Flown level at another height for a minute and more on the way; null where it was not. */
    readonly level: { readonly at: FeetMsl; readonly seconds: Seconds } | null;
  } | null;
  /** Climbed or descended all along on purpose: toward the target and never there, or far where none was briefed. */
  readonly allAlong: Way | null;
}

/**
 * Of some rows, from which on a height is judged against the briefed `target`; all of them where none was briefed.
 * `clock` in seconds, rising; rows without a height are passed over.
 *
 * It is judged from where the height that was held, the briefed one or another, was first come to. Who climbs through it and comes back is judged from
 * the crossing, for going past it is the fault, and no part of the climb; so is who goes on through it and never comes
 * back. Who reached it and lost it later is judged with what was lost. One that was held near the target by the log counts
 * as the target, because an altimeter may have shown it there.
 */
export function heightHeld(
  clock: Float64Array,
  altitude: Column<FeetMsl>,
  span: Span,
  target: FeetMsl | null,
): HeightHeld {
  const rows: number[] = [];
  for (let i = span.start; i < span.end; i++) if (!Number.isNaN(altitude[i]!)) rows.push(i);
  const whole: HeightHeld = { row: span.start, onWay: null, allAlong: null };
  if (rows.length < 2) return whole;
  const at = (k: number) => altitude[rows[k]!]!;
  const time = (k: number) => clock[rows[k]!]!;
  const oneWay = (last: number, least: Feet): Way | null => {
    let [low, high] = [at(0), at(0)];
    for (let k = 0; k <= last; k++) [low, high] = [Math.min(low, at(k)), Math.max(high, at(k))];
    const net = at(last) - at(0);
    if (high - low < least || Math.abs(net) < ONE_WAY * (high - low)) return null;
    return net > 0 ? "climb" : "descent";
  };
  if (target === null) return { ...whole, allAlong: oneWay(rows.length - 1, ON_PURPOSE) };
  const reach = Math.min(MEANT_MOST, MEANT + altimeterDoubt95(target));
  const silent = silenceLimit(stepsOf(Float64Array.from(rows, (i) => clock[i]!)));
  /** Nobody saw whether it was level in a silence. */
  const isSilent = (k: number) => time(k) - time(k - 1) > silent;

  /** Where it is level throughout the time that begins at a row, the mean height of its second half, the first still being soft; null where it is not. */
  const levelFrom = (k: number, { within, seconds }: Level): FeetMsl | null => {
    let [low, high, sum, n] = [at(k), at(k), 0, 0];
    for (let j = k; j < rows.length; j++) {
      [low, high] = [Math.min(low, at(j)), Math.max(high, at(j))];
      if (high - low > within || (j > k && isSilent(j))) return null;
      if (time(j) - time(k) >= seconds / 2) [sum, n] = [sum + at(j), n + 1];
      if (time(j) - time(k) >= seconds) return sum / n;
    }
    return null;
  };
  const firstLevel = (asked: Level, near: Feet): FeetMsl | null => {
    for (let k = 0; k < rows.length; k++) {
      const level = Math.abs(at(k) - target) <= near ? levelFrom(k, asked) : null;
      if (level !== null) return level;
    }
    return null;
  };
  const wentThrough = () => {
    const side = Math.sign(at(0) - target);
    return rows.some((_, k) => (at(k) - target) * side < -reach);
  };
  const held =
    firstLevel(HELD, reach) ?? (wentThrough() ? target : firstLevel(ELSEWHERE, Number.POSITIVE_INFINITY));
  if (held === null) {
    const nearer = Math.abs(at(0) - target) - Math.abs(at(rows.length - 1) - target);
    return nearer >= AWAY ? { ...whole, allAlong: oneWay(rows.length - 1, AWAY) } : whole;
  }
  if (Math.abs(at(0) - held) <= AWAY) return whole;
  const side = Math.sign(at(0) - held);
  const last = rows.findIndex((_, k) => (at(k) - held) * side <= ARRIVED);
  const way = oneWay(last, AWAY);
  if (way === null) return whole;

  let level: NonNullable<HeightHeld["onWay"]>["level"] = null;
  for (let k = 0; k < last; k++) {
    if (levelFrom(k, ELSEWHERE) === null) continue;
    let [low, high, sum, j] = [at(k), at(k), 0, k];
    for (; j < last; j++) {
      [low, high] = [Math.min(low, at(j)), Math.max(high, at(j))];
      if (high - low > ELSEWHERE.within || (j > k && isSilent(j))) break;
      sum += at(j);
    }
    const seconds = time(j - 1) - time(k);
    if (seconds >= ELSEWHERE.seconds && seconds > (level?.seconds ?? 0))
      level = { at: sum / (j - k), seconds };
    k = j - 1;
  }
  const seconds = time(last) - time(0);
  return { row: rows[last]!, onWay: { way, from: at(0), seconds, level }, allAlong: null };
}

/** As it stands among the facts; `utc` of the row from which it is judged, null without times. */
export function heightReached(
  { way, from, seconds, level }: NonNullable<HeightHeld["onWay"]>,
  utc: string | null,
): HeightReached {
  const timed = utc !== null;
  return {
    way,
    fromFt: from,
    utc,
    seconds: timed ? seconds : null,
    level: level && { altitudeFt: level.at, seconds: timed ? level.seconds : null },
  };
}
