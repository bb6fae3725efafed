/** How much of what a brief asks for lies before and after what is judged of it, and why: the log begins or ends in it, or it was joined late or left early. */
import type { CourseExercise } from "../brief/brief.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { airborneRows } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { PartJudged } from "./fact-parts.ts";

/** More than this that the log does not reach is told. Chosen: 18 s at 100 kt, little more than what is called a silence. */
const UNSEEN: NauticalMiles = 0.5;
/** Judged from so soon after its first point, a log began on what was asked, and nobody saw it joined. Chosen, as a silence. */
const AT_BEGINNING: Seconds = 15;
/** Left more than this before its end, it was not flown to it. Chosen: a turn of 120° at 140 kt and standard rate that ends on the next course begins 1.3 NM before the fix. */
const LEFT: NauticalMiles = 2;
/** Less of a short one: left by so much before its end; and joined after so much of a long one, most of it was not flown. Chosen. */
const HALF: Share = 0.5;

interface PartRows {
  readonly length: number;
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  readonly timed: boolean;
}

export interface Asked {
  /** Miles of what was asked that lie before and after what is judged; not finite where it has no such end. */
  readonly room: { readonly before: NauticalMiles; readonly after: NauticalMiles };
  /** The miles about a station that are not judged, of either end: told with it, not missed. */
  readonly beside?: { readonly before: NauticalMiles; readonly after: NauticalMiles };
  /** Of the whole; null where it has no beginning or no end. */
  readonly lengthNm: NauticalMiles | null;
  /** The brief gives the time: then what lies outside it is not asked for. */
  readonly window: boolean;
}

/** Null where all of it is judged, but for a turn at either end. `pathLength`: rows of the whole path. */
export function partJudged(
  rows: PartRows,
  span: Span,
  motion: Motion | null,
  pathLength: number,
  { room, beside = { before: 0, after: 0 }, lengthNm, window }: Asked,
): PartJudged | null {
  const flown = motion && airborneRows(motion);
  const flying = (pathRow: number) => flown === null || flown[pathRow] === 1;
  const soon =
    span.start === 0 || (rows.timed && rows.timeMs[span.start]! - rows.timeMs[0]! <= AT_BEGINNING * 1000);
  const beginsIn = rows.pathStart === 0 && soon && flying(0);
  const endsIn =
    span.end === rows.length && rows.pathStart + rows.length === pathLength && flying(pathLength - 1);
  // where it has no length, nothing says how much of it is late
  const half = lengthNm === null ? Number.POSITIVE_INFINITY : HALF * lengthNm;
  const [late, early] = window ? [Infinity, Infinity] : [Math.max(LEFT, half), Math.min(LEFT, half)];
  const before = beginsIn
    ? missing("log-begins", UNSEEN, room.before, beside.before)
    : missing("joined-late", late, room.before, beside.before);
  const after = endsIn
    ? missing("log-ends", UNSEEN, room.after, beside.after)
    : missing("left-early", early, room.after, beside.after);
  return before || after ? { ofNm: lengthNm, before, after } : null;
}

/** Null where no more than `least` is missing, and where there is no such end to miss. */
const missing = <Why extends string>(
  why: Why,
  least: NauticalMiles,
  room: NauticalMiles,
  beside: NauticalMiles,
) => (Number.isFinite(room) && room > least ? { nm: room + beside, why } : null);

/** Between its two fixes a leg is asked for as a whole; a course to a fix begins, and one from a fix ends, anywhere. */
export function askedOf({ form, scale, course, between }: CourseExercise, room: Asked["room"]): Asked {
  const near = scale.kind === "angular" ? NEAR_STATION : 0;
  const lengthNm = form === "leg" && course.length !== null ? nauticalMilesFromMetres(course.length) : null;
  return {
    room,
    beside: { before: form === "from" ? near : 0, after: near },
    lengthNm,
    window: between !== null,
  };
}
