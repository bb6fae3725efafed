/** What stands under the sentence of an exercise: the drawings and figures of its kind. */
import type { Carried, DocumentExercise, ExerciseSeries } from "../../src/index.ts";
import type { Cursor } from "../drawings/index.ts";
import { factRows } from "../fact-rows.ts";
import { ApproachBody } from "./approach-body.tsx";
import { ArcBody } from "./arc-body.tsx";
import { CourseDrawings } from "./course-drawings.tsx";
import { DescentBody } from "./descent-body.tsx";
import { Facts } from "./facts.tsx";
import { HalfMinutes } from "./half-minutes.tsx";
import { HoldBody, type NextHoldOf } from "./hold-body.tsx";
import { Verdicts } from "./verdicts.tsx";

interface Props {
  readonly exercise: DocumentExercise;
  readonly columns: ExerciseSeries;
  readonly flight: Carried;
  readonly cursor: Cursor;
  readonly nextHold: NextHoldOf | undefined;
}

export function ExerciseBody({ exercise, columns, flight, cursor, nextHold }: Props) {
  const { title } = exercise;
  if (exercise.kind === "course" && exercise.facts && columns.kind === "course") {
    return (
      <>
        <CourseDrawings exercise={exercise} series={columns} legs={flight.document.legs} cursor={cursor} />
        <HalfMinutes title={title} facts={exercise.facts} columns={columns} />
        <Verdicts exercise={exercise} standard={flight.document.standard} />
        <Facts title={title} rows={factRows(exercise.facts)} />
      </>
    );
  }
  const { standard } = flight.document;
  if (exercise.kind === "hold" && columns.kind === "hold")
    return <HoldBody {...{ exercise, series: columns, standard, cursor, nextHold }} />;
  if (exercise.kind === "approach" && columns.kind === "approach")
    return <ApproachBody {...{ exercise, series: columns, standard, cursor }} />;
  if (exercise.kind === "arc" && columns.kind === "arc")
    return <ArcBody {...{ exercise, series: columns, standard, cursor }} />;
  if (exercise.kind === "descent" && columns.kind === "descent")
    return <DescentBody {...{ exercise, series: columns, standard, cursor }} />;
  return null;
}
