/** The parts of an approach: joining the final, over the fix, down the final, and how it ended. */
import type { ApproachExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Seconds } from "../quantity/units.ts";
import { ESTABLISHED_NEEDLE, ESTABLISHED_TRACK, establishedRow } from "../track/index.ts";
import { type BreakOff, brokenOff, ON_FIELD, ROLLING } from "./break-off.ts";
import { type ClimbAway, climbAway } from "./climb-away.ts";
import { ceilRow, type Moment, passing, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import { joinable } from "./joinable.ts";
import type { ApproachRows } from "./rows.ts";
import { endsInRoll, type OverRunway, overRunway } from "./touch.ts";

/** Flown along the final, not across or against it: a fix or threshold is passed so. Chosen: half-way to square. */
export const INBOUND: AngleSize = 60;
/** A fix or threshold is passed when no farther beside it than this. Chosen: wide of any final still being tried. */
const BESIDE: NauticalMiles = 2;
/** Where no fix says where the final begins. Chosen: PANS-OPS finals are optimally 5 NM long, from memory; with a mile before it. */
const FINAL_LENGTH: NauticalMiles = 6;
/** A climb begun so soon after the final was left is one of a missed approach, begun by a turn. Chosen. */
const TURNED_FIRST: Seconds = 20;

const ESTABLISHED = { needle: ESTABLISHED_NEEDLE, track: ESTABLISHED_TRACK };

export interface Segments {
  readonly established: number | null;
  readonly fix: Moment | null;
  /** The threshold's line passed, whether landing or not. */
  readonly threshold: Moment | null;
  readonly missedPoint: Moment | null;
  readonly missed: ClimbAway | null;
  /** The climb after a touch-and-go, which is no missed approach. */
  readonly climbOut: ClimbAway | null;
  /** What the way over the runway shows before a climb. */
  readonly over: OverRunway | null;
  readonly minimum: Moment | null;
  /** The final left by a turn away, to circle or to leave. */
  readonly brokeOff: BreakOff | null;
  readonly outcome: ApproachFacts["outcome"];
  readonly final: Span;
  readonly begins: "final-fix" | "joined" | "start-of-match";
  readonly ends: "minimum" | "missed-approach" | "broke-off" | "threshold" | "end-of-match" | "log-silent";
}

/** The last time a distance before the threshold was passed inbound, near the course, before a row. */
function passedInbound(rows: ApproachRows, distance: NauticalMiles, end: number): Moment | null {
  for (let from = 0, last: Moment | null = null; ; ) {
    const moment = passing(rows.alongNm, -distance, "rising", from, end);
    if (!moment) return last;
    const beside = Math.abs(valueAt(rows.crossTrackNm, moment));
    const inbound = !rows.timed || Math.abs(rows.trackErrorDeg[moment.row]!) < INBOUND;
    if (beside < BESIDE && inbound) last = moment;
    from = moment.row + 1;
  }
}

export function segmentsOf(
  exercise: ApproachExercise,
  rows: ApproachRows,
  fixDistance: NauticalMiles | null,
  logEnds: boolean,
): Segments {
  const length = nauticalMilesFromMetres(inverse(exercise.runway.threshold, exercise.runway.end).distance);
  const established = establishedRow(joinable(rows, ESTABLISHED));
  const abeam = passedInbound(rows, 0, rows.length);
  const until = abeam ? ceilRow(abeam) : rows.length;
  const fix = fixDistance === null ? null : passedInbound(rows, fixDistance, until);
  const joined = established !== null && established < until ? established : null;
  // without a final fix the final is what was flown of its last miles
  const near = passedInbound(rows, FINAL_LENGTH, until);
  const start = fix ? ceilRow(fix) : Math.max(joined ?? 0, near ? ceilRow(near) : 0);
  const climb = climbAway(rows, start);
  const landed = hasLanded(rows, abeam, length) || (!climb && endsInRoll(rows, abeam, length));
  const left = brokenOff(rows, start, Math.min(until, climb ? climb.start.row + 1 : rows.length), landed);
  // a turn before the climb is a part of it; a climb long after one is of another approach
  const turned =
    left && climb && rows.timeMs[climb.start.row]! - rows.timeMs[left.row]! <= TURNED_FIRST * 1000;
  const brokeOff = turned ? null : left;
  const threshold = brokeOff ? null : abeam;
  const missedPoint = passedInbound(rows, exercise.missedPoint, brokeOff?.row ?? rows.length);
  const away = landed || brokeOff ? null : climb;
  const over = away && threshold ? overRunway(rows, threshold, away, length) : null;
  const touched = over !== null && over.slowest !== null;
  const missed = touched ? null : away;
  const climbOut = touched ? away : null;
  let minimum: Moment | null = null;
  if (exercise.minimum) {
    const last = missed ? rows.length : Math.min(rows.length, (brokeOff?.row ?? until) + 1);
    minimum = passing(rows.altitudeFt, exercise.minimum.altitude, "falling", start, last);
  }
  const stops: [number, Segments["ends"]][] = [[rows.length, "end-of-match"]];
  if (threshold) stops.push([ceilRow(threshold), "threshold"]);
  if (missed) stops.push([ceilRow(missed.start), "missed-approach"]);
  if (left) stops.push([left.row, "broke-off"]);
  if (minimum && exercise.minimum?.kind === "decision") stops.push([ceilRow(minimum), "minimum"]);
  const [last, ending] = stops.reduce((a, b) => (b[0] < a[0] ? b : a));
  // what ends it in a silence of the log was not seen, and the first point after it may be past the end
  const silent = last - 1 > start && last < rows.length && rows.silentBefore(last) !== null;
  const [stop, ends] = silent ? ([last - 1, "log-silent"] as const) : [last, ending];
  // past the threshold the aircraft flares, rolls or turns off, and no needle tells of that
  const past = ends === "threshold" && threshold !== null && stop > threshold.row;
  const end = Math.max(Math.min(past ? stop : stop + 1, rows.length), Math.min(start + 2, rows.length));
  const from = Math.min(start, end - 2);
  return {
    established,
    fix,
    threshold,
    missedPoint,
    missed,
    climbOut,
    over,
    minimum,
    brokeOff,
    outcome: brokeOff ? "left-final" : outcomeOf(rows, { landed, missed, over, threshold, logEnds }),
    final: { start: from, end },
    begins: fix ? "final-fix" : joined === null ? "start-of-match" : "joined",
    ends,
  };
}

function hasLanded(rows: ApproachRows, threshold: Moment | null, length: NauticalMiles): boolean {
  if (!threshold) return false;
  for (let i = threshold.row; i < rows.length; i++) {
    const onField = rows.alongNm[i]! < length + ON_FIELD && Math.abs(rows.crossTrackNm[i]!) < ON_FIELD;
    if (onField && rows.groundSpeedKt[i]! < ROLLING) return true;
  }
  return false;
}

function outcomeOf(
  rows: ApproachRows,
  at: {
    readonly landed: boolean;
    readonly missed: Segments["missed"];
    readonly over: OverRunway | null;
    readonly threshold: Moment | null;
    readonly logEnds: boolean;
  },
): Segments["outcome"] {
  if (!rows.timed) return "cannot-tell";
  if (at.landed) return "landed";
  if (at.over && at.over.slowest !== null) return "touch-and-go";
  if (at.missed) return at.over?.low && at.over.levelS !== null ? "touch-and-go-or-low-pass" : "missed";
  if (at.logEnds && !at.threshold) return "log-ends";
  return "cannot-tell";
}
