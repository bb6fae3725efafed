/** How the turn onto a line ended: on it, past it, or short of it, and on which track. */
import type { JoiningRecord } from "../quantity/excursion-record.ts";
import type { Finding } from "../quantity/record.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, Share, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { AgainstCourse } from "./against-course.ts";
import { CLOSING, ESTABLISHED_NEEDLE, type Intercept, measureIntercept, rolledOut } from "./intercept.ts";

/** Near the line and nearly along it, for so long: the turn onto it is over, however it ended. Tuned: a bad roll-out is off by less. */
export const NEARLY_ALONG: AngleSize = 25;
const FOR: Seconds = 10;
/** Farther off than this, or come back from on such a cut, the aircraft was turned away on purpose. Chosen: less than a usual cut of 30. */
const ON_PURPOSE: AngleSize = 20;
/** The track after the roll-out is its mean over this. Chosen: half a wander. */
const TRACK_OVER: Seconds = 10;

export interface Joining {
  /** Of the roll-out. */
  readonly time: UtcMillis;
  /** There, right positive. */
  readonly crossTrackNm: NauticalMiles;
  /** Mean after it, track less course, right positive. */
  readonly trackErrorDeg: TurnDegrees;
  /** Null: in time. */
  readonly turned: "turned-late" | "turned-early" | null;
}

/**
 * How the turn onto a line ended that some rows lead to; null where there was no cut, or no turn that ended near the
 * line. `established`: the cut that ended in being so. `misturned`: rolled out past the line at a row, or parallel to
 * it and short of it, by this much, the turn was late or early. `within`: of full scale, near the line.
 */
export function findJoining(
  rows: AgainstCourse,
  established: Pick<Intercept, "startUtc" | "angleDeg"> | null,
  misturned: (row: number) => NauticalMiles,
  within: Share = ESTABLISHED_NEEDLE,
): Joining | null {
  const intercept = measureIntercept(rows, arrivedRow(rows, within));
  const joining = intercept && rollOut(rows, intercept, misturned);
  const cutAgain =
    joining &&
    established &&
    Date.parse(established.startUtc) > joining.time &&
    Math.abs(established.angleDeg) > ON_PURPOSE;
  return cutAgain ? null : joining;
}

/** The first row from which the aircraft keeps near the line, however unsteadily; null where it never does. */
export function arrivedRow(rows: AgainstCourse, within: Share = ESTABLISHED_NEEDLE): number | null {
  let since = -1;
  for (let i = 0; i < rows.length; i++) {
    const near = Math.abs(rows.needle[i]!) <= within && Math.abs(rows.trackErrorDeg[i]!) <= NEARLY_ALONG;
    if (!near) since = -1;
    else {
      if (since < 0 || rows.gapBefore[i]) since = i;
      if (rows.timeMs[i]! - rows.timeMs[since]! >= FOR * 1000) return since;
    }
  }
  return null;
}

function rollOut(
  rows: AgainstCourse,
  intercept: Intercept,
  misturned: (row: number) => NauticalMiles,
): Joining | null {
  const startMs = Date.parse(intercept.startUtc);
  const side = Math.sign(intercept.startCrossTrackNm);
  const cut = Math.abs(intercept.angleDeg);
  for (let i = 1; i < rows.length; i++) {
    if (rows.timeMs[i]! <= startMs) continue;
    if (rows.gapBefore[i]) return null;
    if (!rolledOut(rows, i, side, cut)) continue;
    const trackErrorDeg = meanOver(rows, i);
    if (Math.abs(trackErrorDeg) > ON_PURPOSE) return null;
    const past = -rows.crossTrackNm[i]! * side;
    const closing = -trackErrorDeg * side;
    const early = past <= -misturned(i) && closing <= CLOSING;
    const turned = past >= misturned(i) ? "turned-late" : early ? "turned-early" : null;
    return { time: rows.timeMs[i]!, crossTrackNm: rows.crossTrackNm[i]!, trackErrorDeg, turned };
  }
  return null;
}

function meanOver(rows: AgainstCourse, row: number): TurnDegrees {
  let sum = 0;
  let n = 0;
  for (let i = row; i < rows.length && rows.timeMs[i]! - rows.timeMs[row]! <= TRACK_OVER * 1000; i++) {
    sum += rows.trackErrorDeg[i]!;
    n++;
  }
  return sum / n;
}

export function joiningRecord({ time, crossTrackNm, trackErrorDeg, turned }: Joining): JoiningRecord {
  const how = turned === null ? "in-time" : turned === "turned-late" ? "late" : "early";
  return { rolledOutUtc: utcText(time), crossTrackNm, trackErrorDeg, turned: how };
}

/** A turn that ended off the line; none where it was in time. */
export function turnedFindings(joining: Joining | null): Finding[] {
  if (!joining?.turned) return [];
  const { time, crossTrackNm, turned: code } = joining;
  const facts = { side: crossTrackNm > 0 ? "right" : "left", byNm: Math.abs(crossTrackNm) };
  return [{ code, facts, evidence: { fromUtc: utcText(time), toUtc: null } }];
}

/** How far past the line an intercept went on after its turn, as facts of a finding. */
export const wentOnFacts = (wentOn: Intercept["wentOn"]): Finding["facts"] =>
  wentOn ? { wentOnNm: wentOn.nm, wentOnNeedle: wentOn.needle, wentOnUtc: wentOn.utc } : {};
