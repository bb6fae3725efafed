/** One exercise measured and judged, as it stands in the document, with its columns for charts. */
import { type KnownRunway, measureApproach } from "../approach/index.ts";
import type {
  ApproachExercise,
  ArcExercise,
  CourseExercise,
  DescentExercise,
  HoldExercise,
} from "../brief/brief.ts";
import { measureArc, measureCourse, measureDescent } from "../course/index.ts";
import type { Position } from "../geodesy/position.ts";
import { gradeApproach, gradeArc, gradeCourse, gradeDescent, gradeHold } from "../grade/index.ts";
import { type FoundHold, measureHold } from "../hold/index.ts";
import { threeFigures } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import { HOLDING, type HoldingStandard } from "../standard/holding.ts";
import type { TestStandard } from "../standard/test-standard.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { Track } from "../track/track.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { DocumentExercise } from "./document.ts";
import { type Flown, flownAgain, flownAsWell, told } from "./flown.ts";
import type { LeftOut } from "./not-seen.ts";
import { descendedOnPressure, heldOnPressure } from "./pressure-heights.ts";
import type { ExerciseSeries, PathSeries } from "./series.ts";

/** The flight as the exercises are measured on it. */
export interface Flight {
  readonly path: PathSeries;
  /** As of the track: where its heights are on 1013.25 hPa. */
  readonly heightsBy?: Track["heightsBy"];
  readonly motion: Motion | null;
  readonly legs: readonly Leg[];
  readonly wind: WindEstimate | null;
  /** Landing directions that are known beside the brief, near to the flight. */
  readonly runways: readonly KnownRunway[];
  /** The fixes of the brief, about which an arc may have led to a final. */
  readonly stations: readonly Position[];
  readonly leftOut: LeftOut;
  /** What the exercises are held against, or null. */
  readonly standard: TestStandard | null;
}

export interface ExerciseResult {
  readonly record: DocumentExercise;
  readonly series: ExerciseSeries | null;
}

export const columnsOf = ({ path, motion, heightsBy }: Flight) => ({
  time: motion ? path.timeMs : null,
  latitude: path.latitude,
  longitude: path.longitude,
  altitude: path.altitudeFt,
  ...(heightsBy && { heightsBy }),
});

export function courseResult(
  exercise: CourseExercise,
  matched: Span,
  source: "brief" | "fitted",
  flown: Flown,
  flight: Flight,
): ExerciseResult {
  const {
    span,
    facts: measured,
    findings: seen,
    whatWouldHaveWorked,
    series,
  } = measureCourse({
    exercise,
    path: columnsOf(flight),
    span: matched,
    motion: flight.motion,
    wind: flight.wind,
  });
  const facts = flight.heightsBy ? heldOnPressure(measured) : measured;
  const record = {
    ...told(exercise.title, source, { ...flown, span }, flight),
    verdicts: flight.standard ? gradeCourse(facts, flight.standard) : [],
  };
  const findings = [...seen, ...flownAsWell({ ...flown, span }, flight.motion)];
  return { record: { kind: "course", ...record, facts, findings, whatWouldHaveWorked }, series };
}

export function arcResult(exercise: ArcExercise, span: Span, flown: Flown, flight: Flight): ExerciseResult {
  const { motion, legs, wind } = flight;
  const { series, facts, ...rest } = measureArc({
    exercise,
    path: columnsOf(flight),
    span,
    motion,
    legs,
    wind,
  });
  const measured = { ...rest, facts: flight.heightsBy ? heldOnPressure(facts) : facts };
  const verdicts = flight.standard ? gradeArc(measured.facts, flight.standard) : [];
  const record = { ...told(exercise.title, "brief", flown, flight), verdicts };
  return { record: { kind: "arc", ...record, ...measured }, series };
}

/** `earlier`: the row at which the height of a descent before it was wanted, or null. */
export function descentResult(
  exercise: DescentExercise,
  span: Span,
  flown: Flown,
  flight: Flight,
  earlier: number | null,
): ExerciseResult {
  const { motion, wind } = flight;
  const path = columnsOf(flight);
  const { series, ...gone } = measureDescent({ exercise, path, span, earlier, motion, wind });
  const measured = flight.heightsBy ? descendedOnPressure(gone) : gone;
  const verdicts = flight.standard ? gradeDescent(measured.facts, flight.standard) : [];
  const record = { ...told(exercise.title, "brief", flown, flight), verdicts, whatWouldHaveWorked: null };
  return { record: { kind: "descent", ...record, ...measured }, series };
}

/** Whose holds are flown: as the standard says; measured by those of the United States where none says it, and then not judged by them. */
const holdingOf = ({ standard }: Flight): HoldingStandard => HOLDING[standard?.hold.rules ?? "us"];

export function holdResult(
  exercise: HoldExercise | null,
  found: FoundHold,
  flown: Flown,
  flight: Flight & { readonly motion: Motion },
): ExerciseResult {
  const { motion, wind } = flight;
  const standard = holdingOf(flight);
  const { facts: held, findings, series } = measureHold({ exercise, found, motion, wind, standard });
  const facts = flight.heightsBy ? heldOnPressure(held) : held;
  const { inboundTrueDeg: inbound, inboundMagneticDeg: magnetic, turns } = facts;
  const course = magnetic === null ? `${threeFigures(inbound)}°T` : `${threeFigures(magnetic)}°M`;
  const asFound = facts.loneLap
    ? `One lap to the ${turns}, back on ${course}`
    : `Hold, inbound ${course}, ${turns} turns`;
  const title = exercise?.title ?? asFound;
  const verdicts = flight.standard ? gradeHold(facts, flight.standard) : [];
  const record = { ...told(title, exercise ? "brief" : "found", flown, flight), verdicts };
  return { record: { kind: "hold", ...record, facts, findings, whatWouldHaveWorked: null }, series };
}

export function approachResult(
  exercise: ApproachExercise,
  matched: Span,
  source: "brief" | "found",
  flown: Flown,
  flight: Flight,
): ExerciseResult {
  const { motion, wind, legs, stations } = flight;
  const { series, span, ...measured } = measureApproach({
    exercise,
    path: columnsOf(flight),
    span: matched,
    motion,
    wind,
    legs,
    stations,
  });
  // what was only found was held to nothing
  const { standard } = flight;
  const verdicts = standard && source === "brief" ? gradeApproach(measured.facts, standard) : [];
  const record = { ...told(exercise.title, source, { ...flown, span }, flight), verdicts };
  const findings = [...measured.findings, ...flownAgain(flown, motion)];
  return { record: { kind: "approach", ...record, ...measured, findings }, series };
}
