/** Each exercise of the brief, then what else was held; without a brief the long straights too: as they stand in the document. */
import type { Brief, CourseExercise, Exercise, HoldExercise } from "../brief/brief.ts";
import { fitCourses, measureCourse } from "../course/index.ts";
import { gradeCourse } from "../grade/index.ts";
import { type FoundHold, measureHold } from "../hold/index.ts";
import { type Match, matchExercises } from "../match/index.ts";
import { threeFigures } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import { HOLDING, type HoldingStandard } from "../standard/holding.ts";
import type { TestStandard } from "../standard/tolerance.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { DocumentExercise } from "./document.ts";
import { holdsBeside, holdWithin, runsOfHolds, shared } from "./hold-matches.ts";
import type { ExerciseSeries, PathSeries } from "./series.ts";

/** When an exercise was flown: as matched, found, or where a line was fitted. */
interface Flown {
  readonly span: Span | null;
  readonly by: Match["by"] | "fitted" | "found";
  readonly confidence: number;
}

/** The flight as the exercises are measured on it. */
export interface Flight {
  readonly path: PathSeries;
  readonly motion: Motion | null;
  readonly legs: readonly Leg[];
  readonly wind: WindEstimate | null;
  /** What the exercises are held against, or null. */
  readonly standard: TestStandard | null;
}

export interface ExerciseResult {
  readonly record: DocumentExercise;
  readonly series: ExerciseSeries | null;
}

const columnsOf = ({ path, motion }: Flight) => ({
  time: motion ? path.timeMs : null,
  latitude: path.latitude,
  longitude: path.longitude,
  altitude: path.altitudeFt,
});

/** What the document says of every exercise, of whatever kind. */
function told(title: string, source: DocumentExercise["source"], flown: Flown, { motion }: Flight) {
  const { span, by, confidence } = flown;
  return {
    title,
    source,
    startUtc: span && motion ? utcText(motion.time[span.start]!) : null,
    endUtc: span && motion ? utcText(motion.time[span.end - 1]!) : null,
    match: span ? { by, confidence } : null,
  };
}

/** Not flown, or not compared by this version. */
function unmeasured(exercise: Exercise, flown: Flown, flight: Flight): ExerciseResult {
  const { kind, title } = exercise;
  const { standard } = flight;
  const record = {
    ...told(title, "brief", flown, flight),
    facts: null,
    findings: [],
    verdicts: kind === "course" && standard ? gradeCourse(null, standard) : [],
    whatWouldHaveWorked: null,
  };
  return { record: { kind, ...record }, series: null };
}

function courseResult(
  exercise: CourseExercise,
  span: Span,
  source: "brief" | "fitted",
  flown: Flown,
  flight: Flight,
): ExerciseResult {
  const { facts, findings, whatWouldHaveWorked, series } = measureCourse({
    exercise,
    path: columnsOf(flight),
    span,
    motion: flight.motion,
    wind: flight.wind,
  });
  const record = {
    ...told(exercise.title, source, flown, flight),
    verdicts: flight.standard ? gradeCourse(facts, flight.standard) : [],
  };
  return { record: { kind: "course", ...record, facts, findings, whatWouldHaveWorked }, series };
}

/** Whose holds are flown: those of the standard that the exercises are held against; of the United States where none is ours. */
const holdingOf = ({ standard }: Flight): HoldingStandard =>
  standard?.id === "instrument-rating-eu" ? HOLDING.icao : HOLDING.us;

function holdResult(
  exercise: HoldExercise | null,
  found: FoundHold,
  flown: Flown,
  flight: Flight & { readonly motion: Motion },
): ExerciseResult {
  const { motion, wind } = flight;
  const standard = holdingOf(flight);
  const { facts, findings, series } = measureHold({ exercise, found, motion, wind, standard });
  const { inboundTrueDeg: inbound, inboundMagneticDeg: magnetic, turns } = facts;
  const course = magnetic === null ? `${threeFigures(inbound)}°T` : `${threeFigures(magnetic)}°M`;
  const title = exercise?.title ?? `Hold, inbound ${course}, ${turns} turns`;
  const record = { ...told(title, exercise ? "brief" : "found", flown, flight), verdicts: [] };
  return { record: { kind: "hold", ...record, facts, findings, whatWouldHaveWorked: null }, series };
}

/** Holds that were flown though no brief asked for them, in flown order. */
function foundHolds(
  taken: readonly Span[],
  brief: Brief | null,
  flight: Flight,
): [FoundHold, ExerciseResult][] {
  const { motion, legs } = flight;
  if (!motion) return [];
  // a brief says what was meant: what only may be a hold is not held against it
  const offered = holdsBeside(taken, motion, legs).filter((hold) => !brief || !hold.maybeCircuit);
  return offered.map((hold) => {
    const flown = { span: hold.span, by: "found", confidence: hold.sure ? 1 : 0.5 } as const;
    return [hold, holdResult(null, hold, flown, { ...flight, motion })];
  });
}

/** The exercises of the brief, in its order, whether flown or not; then the holds that it does not name. */
export function briefedExercises(brief: Brief, flight: Flight): ExerciseResult[] {
  const { motion, legs } = flight;
  const runs = motion ? runsOfHolds(brief, motion, legs) : new Map<number, never[]>();
  const matches = matchExercises(
    brief,
    {
      ...columnsOf(flight),
      trackAngle: motion?.trackAngle ?? null,
      legs: motion ? legs : null,
    },
    runs,
  );
  const held: Span[] = [];
  const results = brief.exercises.map((exercise, i): ExerciseResult => {
    const match = matches[i]!;
    const { span } = match;
    if (span && exercise.kind === "course") return courseResult(exercise, span, "brief", match, flight);
    if (!span || !motion || exercise.kind !== "hold") return unmeasured(exercise, match, flight);
    const found = holdWithin(exercise, span, runs.get(i) ?? [], motion, legs);
    if (!found) return unmeasured(exercise, match, flight);
    held.push(found.span);
    return holdResult(exercise, found, { ...match, span: found.span }, { ...flight, motion });
  });
  return [...results, ...foundHolds(held, brief, flight).map(([, result]) => result)];
}

/** Without a brief: the holds found, and lines fitted to the other long straights, in flown order; of a line straightness is measured, not deviation. */
export function fittedExercises(flight: Flight): ExerciseResult[] {
  if (!flight.motion) return [];
  const holds = foundHolds([], null, flight);
  const lines = fitCourses(flight.motion, flight.legs)
    .filter(({ span }) => !holds.some(([hold]) => shared(span, hold.span)))
    .map(({ exercise, span }) => {
      const flown = { span, by: "fitted", confidence: 1 } as const;
      return { span, result: courseResult(exercise, span, "fitted", flown, flight) };
    });
  return [...holds.map(([{ span }, result]) => ({ span, result })), ...lines]
    .sort((a, b) => a.span.start - b.span.start)
    .map(({ result }) => result);
}
