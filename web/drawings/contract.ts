/** The one place where the drawings meet the analysis: the types of the document and of its columns. */
import type { CourseFacts, Excursion } from "../../src/index.ts";

export type {
  CourseFacts,
  CourseSeries,
  DebriefDocument,
  DocumentExercise,
  DocumentLeg,
  Excursion,
  FlightSeries,
  PathSeries,
  WindRecord,
} from "../../src/index.ts";

export type NeedleScaleFacts = CourseFacts["scale"];
export { acrossAt, needleOf } from "../../src/index.ts";
export type Side = Excursion["side"];
