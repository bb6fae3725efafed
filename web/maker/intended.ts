/** What was flown becomes what was meant: a fitted course or a hold found, as an exercise of the brief, rounded as briefs are. */
import {
  alongAcrossExact,
  courseBetween,
  type DocumentExercise,
  direction,
  distanceNm,
  type ListedPoint,
  nauticalMilesFromMetres,
  type Position,
  usualLegTime,
  variationAt,
} from "../../src/index.ts";
import { listedFix, newFix } from "./new-fix.ts";
import type { Values } from "./values.ts";

export interface Intended {
  readonly exercise: Values;
  /** A fix that the brief does not have yet, by its ident. */
  readonly fixes: Values;
  /** What of it no log shows and was taken as usual, in words. */
  readonly assumed?: string;
  /** Half-width of the 95 % interval of its inbound course, whole degrees, where a neighbouring degree may be meant. */
  readonly inboundWithinDeg?: number;
}

interface Known {
  readonly points: readonly ListedPoint[];
  /** Of the flight, ms UTC. */
  readonly time: number | null;
  /** For a fix that nothing names. */
  readonly freeIdent: string;
}

/** A point no farther beside a fitted line may be the one that it was flown to, NM. Chosen: a light aircraft tracks a station so. */
const BESIDE_NM = 0.5;
/** ... no farther beyond its end, NM. Chosen: a lesson's leg. */
const BEYOND_NM = 20;
/** ... nor this much before it: a course is left before its station is reached. */
const BEFORE_NM = 2;
/** No point of a line lies farther north or south of its end, degrees: long lists are passed over quickly. */
const FAR_DEG = 2;
/** A hold is found within this of its fix, NM. Chosen: the finder's own doubt is less. */
const FIX_NM = 0.5;
/** To the whole degree, as courses are given: magnetic, or true where no variation is known. */
function written(
  trueDeg: number,
  at: Position & { declination?: number | null },
  time: number | null,
): string {
  const variation = at.declination ?? variationAt(at, time ?? Date.now())?.degrees ?? null;
  const degrees = Math.round(direction(trueDeg - (variation ?? 0))) || 360;
  return `${String(degrees).padStart(3, "0")}${variation === null ? "T" : ""}`;
}

/** From a second before to a second after, so that rounding leaves nothing of it out. */
function window({ startUtc, endUtc }: DocumentExercise): Values {
  if (!startUtc || !endUtc) return {};
  const clock = (ms: number) => new Date(ms).toISOString().slice(11, 19);
  const [start, end] = [Date.parse(startUtc), Date.parse(endUtc)];
  return { between: [clock(Math.floor(start / 1000) * 1000), clock(Math.ceil(end / 1000) * 1000 + 1000)] };
}

/** The known point that a straight line was flown to, else from: the one nearest to its end. */
function pointOnLine(
  [from, to]: readonly [Position, Position],
  points: readonly ListedPoint[],
): { point: ListedPoint; form: "to" | "from" } | null {
  const line = courseBetween(from, to);
  const length = distanceNm(from, to);
  let best: { point: ListedPoint; form: "to" | "from"; away: number } | null = null;
  for (const point of points) {
    if (Math.abs(point.latitude - to.latitude) > FAR_DEG) continue;
    const place = alongAcrossExact(line, point);
    const [along, across] = [place.along, place.across].map(nauticalMilesFromMetres) as [number, number];
    if (Math.abs(across) > BESIDE_NM) continue;
    const [ahead, behind] = [along - length, -along];
    const toward = ahead > -BEFORE_NM && ahead < BEYOND_NM;
    const past = behind > -BEFORE_NM && behind < BEYOND_NM;
    if (!toward && !past) continue;
    const form = toward && (!past || Math.abs(ahead) <= Math.abs(behind)) ? "to" : "from";
    const near = Math.abs(form === "to" ? ahead : behind);
    if (best === null || near < best.away) best = { point, form, away: near };
  }
  return best;
}

function courseMeant(exercise: DocumentExercise & { kind: "course" }, known: Known): Intended | null {
  const { facts } = exercise;
  if (!facts) return null;
  const [start, end] = [facts.line.start, facts.line.end].map(([latitude, longitude]) => ({
    latitude,
    longitude,
  }));
  const found = pointOnLine([start!, end!], known.points);
  const { ident, fixes } = found ? listedFix(found.point) : newFix(end!, known.freeIdent);
  const course = written(facts.courseTrueDeg, found?.point ?? end!, known.time);
  return { exercise: { course, [found?.form ?? "to"]: ident, ...window(exercise) }, fixes };
}

const minutes = (seconds: number): string => (seconds % 60 === 0 ? `${seconds / 60} min` : `${seconds} s`);

type HoldFacts = NonNullable<(DocumentExercise & { kind: "hold" })["facts"]>;

/** What legs were asked for no log shows, and those flown are what the wind and the pilot made of them. */
function legMeant({ timing, altitude, laps }: HoldFacts): { leg: string; assumed: string } {
  const leg = minutes(usualLegTime(timing, altitude?.meanFt ?? null));
  const which = timing === "us" ? "inbound" : "outbound";
  const flown = laps.flatMap((lap) => lap[which]?.seconds ?? []).map(Math.round);
  const took =
    flown.length > 0 ? ` ${which[0]!.toUpperCase()}${which.slice(1)} flown: ${flown.join(", ")} s.` : "";
  return {
    leg,
    assumed: `Its leg of ${leg} is assumed, the usual time at its height: change it where another was asked for.${took}`,
  };
}

/** A course read off a flight to less than this may be given as it is, degrees: briefs are to the whole degree. */
const SURE_DEG = 1;

/** How far the inbound course found may be off the one asked for, whole degrees; null where it is as good as published. */
function inboundWithin(facts: HoldFacts): number | null {
  const { inbound95Deg, sure } = facts;
  if (inbound95Deg === null) return null;
  return sure !== false && inbound95Deg <= SURE_DEG ? null : Math.max(1, Math.ceil(inbound95Deg));
}

function holdMeant(exercise: DocumentExercise & { kind: "hold" }, known: Known): Intended | null {
  const { facts } = exercise;
  if (!facts) return null;
  const near = known.points
    .map((point) => ({ point, away: distanceNm(point, facts.fix) }))
    .filter(({ away }) => away < Math.max(FIX_NM, facts.fix.doubt95Nm ?? 0))
    .sort((a, b) => a.away - b.away)[0]?.point;
  const { ident, fixes } = near ? listedFix(near) : newFix(facts.fix, known.freeIdent);
  const inbound = written(facts.inboundTrueDeg, near ?? facts.fix, known.time);
  const { leg, assumed } = legMeant(facts);
  const within = inboundWithin(facts);
  const unsure =
    within === null ? "" : ` Its inbound course is read off the flight, ± ${within}°: look at it.`;
  return {
    exercise: { hold: ident, inbound, turns: facts.turns, leg, ...window(exercise) },
    fixes,
    assumed: assumed + unsure,
    ...(within !== null && { inboundWithinDeg: within }),
  };
}

/** A final found was flown to a runway of the lists; what guided it is not known, so it is held against the centre line. */
function approachMeant(exercise: DocumentExercise & { kind: "approach" }): Intended | null {
  if (!exercise.facts) return null;
  const { ident, threshold, end, elevationFt } = exercise.facts.runway;
  const runway = { ...(ident === null ? {} : { ident }), threshold, end, elevation_ft: elevationFt };
  return { exercise: { approach: { runway, guidance: "centre-line" }, ...window(exercise) }, fixes: {} };
}

/** Null for what was meant already, and for what cannot be meant. */
export function intended(exercise: DocumentExercise, known: Known): Intended | null {
  if (exercise.source === "brief") return null;
  if (exercise.kind === "course") return courseMeant(exercise, known);
  if (exercise.kind === "hold") return holdMeant(exercise, known);
  if (exercise.kind === "approach") return approachMeant(exercise);
  return null;
}
