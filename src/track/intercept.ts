/** How the course was joined: the cut, where it began, and how far it went past. */
import { longestSilence } from "../quantity/silence.ts";
import { utcText } from "../quantity/time.ts";
import type {
  AngleSize,
  DegreesPerSecond,
  NauticalMiles,
  Seconds,
  Share,
  TurnDegrees,
} from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { AgainstCourse } from "./against-course.ts";
import { steadyFrom } from "./steady.ts";

/** Established: needle within half scale. ICAO wording quoted in FAA-H-8261-1, p. 4-6 ("within half full scale deflection"). */
export const ESTABLISHED_NEEDLE: Share = 0.5;
/** ... and the track within this of the course, for this long. Tuned: wider than a hand-flown heading’s wander, narrower than any intercept; a standard-rate turn through the course passes these 20 degrees in 7 s. */
export const ESTABLISHED_TRACK: AngleSize = 10;
const ESTABLISHED_FOR: Seconds = 10;
/** Less than this toward the course is no cut but keeping it. The trade's small correction is 5 degrees. */
const CUT: AngleSize = 10;
/** More than this toward the course is a turn that has still to be made. */
const CUT_MOST: AngleSize = 100;
/** Turning slower than this is straight; a cut is flown straight for so long, which a turn through it is not. Tuned. */
const STEADY: DegreesPerSecond = 1;
const STEADY_FOR: Seconds = 10;
/** Past the course later than this after joining is no overshoot of the intercept but how the course was kept. Tuned. */
const OVERSHOOT_WITHIN: Seconds = 60;

/** A cut flown through the line comes back to it within this, counted from line to line. Chosen: a minute square away from it, a minute in the turn, two minutes back at 30°. */
const FLOWN_THROUGH: Seconds = 240;
/** Moving back by this, past the course or short of it, the intercept is over. Chosen: over a receiver’s noise, under any cut. */
const COMING_BACK: NauticalMiles = 0.004;
/** Farther out than where the turn ended by this, it went on. Chosen: over what a steady track wanders in half a minute. */
const WENT_ON: NauticalMiles = 0.05;
/** Still closing by more than this, the aircraft is on its way onto the course. Tuned: twice the wander. */
export const CLOSING: AngleSize = 4;

export interface Intercept {
  readonly startUtc: string;
  /** Track less course at the cut, right positive. */
  readonly angleDeg: TurnDegrees;
  readonly startCrossTrackNm: NauticalMiles;
  readonly joinedUtc: string;
  /** How far past the course before coming back, never negative. */
  readonly overshootNm: NauticalMiles;
  /** Share of full scale there, and when; where it went past by nothing, where it was joined. */
  readonly overshootNeedle: Share;
  readonly overshootUtc: string;
  /** Still on the far side after that turn, and not yet joined, it went on to here. Missing where it came back from where the turn ended. */
  readonly wentOn?: { readonly nm: NauticalMiles; readonly needle: Share; readonly utc: string };
  /** The longest silence of the log from the cut until it was joined: how far past it went may be unseen then. Missing where there was none. */
  readonly silentS?: Seconds;
}

/** The first row from which the aircraft is established on the course; null where it never is, or where the log has no times. */
export function establishedRow(rows: AgainstCourse): number | null {
  if (!rows.timed) return null;
  let since = -1;
  for (let i = 0; i < rows.length; i++) {
    const small =
      Math.abs(rows.needle[i]!) <= ESTABLISHED_NEEDLE &&
      Math.abs(rows.trackErrorDeg[i]!) <= ESTABLISHED_TRACK;
    if (!small) since = -1;
    else {
      if (since < 0 || rows.gapBefore[i]) since = i;
      if (rows.timeMs[i]! - rows.timeMs[since]! >= ESTABLISHED_FOR * 1000) return since;
    }
  }
  return null;
}

/** The intercept before the course was joined at a row; null where there was none, or where it cannot be told. */
export function measureIntercept(rows: AgainstCourse, joined: number | null): Intercept | null {
  if (!rows.timed || joined === null || joined === 0) return null;
  // back from joining to the beginning of the cut: the side it came from is that of its widest row
  const converging = (i: number, side: number) => {
    const toward = -rows.trackErrorDeg[i]! * side;
    return toward >= CUT && toward <= CUT_MOST && rows.crossTrackNm[i]! * side > 0;
  };
  const beginning = (from: number, side: number) => {
    let row = from;
    while (row > 0 && !rows.gapBefore[row] && converging(row - 1, side)) row--;
    return row;
  };
  let last = joined - 1;
  while (last >= 0 && !converging(last, Math.sign(rows.crossTrackNm[last]!))) last--;
  if (last < 0) return null;
  let side = Math.sign(rows.crossTrackNm[last]!);
  let start = beginning(last, side);
  // the way back of a cut that went past the course belongs to that cut
  for (let i = start - 1; i >= 0 && !rows.gapBefore[i + 1]; i--) {
    if (rows.timeMs[last]! - rows.timeMs[i]! > FLOWN_THROUGH * 1000) break;
    if (rows.crossTrackNm[i]! * side > 0) continue;
    const first = beginning(i, -side);
    if (!converging(i, -side) || !heldSteady(rows, first, i)) break;
    side = -side;
    last = i;
    start = first;
    i = start;
  }

  const errors = rows.trackErrorDeg.slice(start, last + 1);
  const steady = errors.filter((_, k) => Math.abs(rows.turnRate[start + k]!) < STEADY);
  const angle = median(steady.length > 0 ? steady : errors);
  const silent = (row: number) =>
    rows.gapBefore[row] ? (rows.timeMs[row]! - rows.timeMs[row - 1]!) / 1000 : null;
  const silentS = longestSilence(silent, start, joined);
  return {
    startUtc: utcText(rows.timeMs[start]!),
    angleDeg: angle,
    startCrossTrackNm: rows.crossTrackNm[start]!,
    joinedUtc: utcText(rows.timeMs[joined]!),
    ...overshoot(rows, last, joined, side, Math.abs(angle)),
    ...(silentS > 0 ? { silentS } : {}),
  };
}

/** Toward the line by a cut, on whichever side of it; track less line, right positive. */
export const isCut = (trackError: TurnDegrees, crossTrack: number): boolean =>
  -trackError * Math.sign(crossTrack) >= CUT;

/** A cut was flown, not only swept through by a turn: straight for long enough. */
function heldSteady(rows: AgainstCourse, start: number, last: number): boolean {
  let seconds = 0;
  for (let i = start + 1; i <= last; i++) {
    if (Math.abs(rows.turnRate[i]!) < STEADY) seconds += (rows.timeMs[i]! - rows.timeMs[i - 1]!) / 1000;
  }
  return seconds >= STEADY_FOR;
}

/**
 * Whether the turn off a cut has ended at a row, however well: the track steady, by less than half of the cut toward the
 * course and beyond.
 */
export function rolledOut(rows: AgainstCourse, row: number, side: number, cut: AngleSize): boolean {
  return -rows.trackErrorDeg[row]! * side <= cut / 2 && steadyFrom(rows, row);
}

/**
 * The farthest past the course before coming back to it, never negative. Rolled out past it, or short of it and
 * moving off again, what comes later is not of the intercept but how the course was kept, or of the way on until it was joined.
 */
function overshoot(
  rows: AgainstCourse,
  from: number,
  joined: number,
  side: number,
  cut: AngleSize,
): Pick<Intercept, "overshootNm" | "overshootNeedle" | "overshootUtc" | "wentOn"> {
  const until = rows.timeMs[joined]! + OVERSHOOT_WITHIN * 1000;
  const past = (row: number) => -rows.crossTrackNm[row]! * side;
  let [row, farthest] = [from, from];
  for (; row < rows.length && rows.timeMs[row]! <= until; row++) {
    const beyond = past(row);
    if (beyond > past(farthest)) farthest = row;
    if (beyond < past(farthest) - COMING_BACK) break;
    const onItsWay = beyond < 0 && -rows.trackErrorDeg[row]! * side > CLOSING;
    if (!onItsWay && rolledOut(rows, row, side, cut)) break;
  }
  const overshootNm = Math.max(0, past(farthest));
  const at = overshootNm > 0 ? farthest : joined;
  const told = {
    overshootNm,
    overshootNeedle: overshootNm > 0 ? Math.abs(rows.needle[at]!) : 0,
    overshootUtc: utcText(rows.timeMs[at]!),
  };
  let on = farthest;
  for (; row < joined && past(row) > 0; row++) if (past(row) > past(on)) on = row;
  if (past(on) < overshootNm + WENT_ON) return told;
  const needle = Math.abs(rows.needle[on]!);
  return { ...told, wentOn: { nm: past(on), needle, utc: utcText(rows.timeMs[on]!) } };
}
