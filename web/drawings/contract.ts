/** The one place where the drawings meet the analysis: the types of the document and of its columns. */
import type { CourseFacts, DebriefDocument, Excursion } from "../../src/index.ts";

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

export type DayWind = NonNullable<DebriefDocument["wind"]>;
export type NeedleScaleFacts = CourseFacts["scale"];
export type Side = Excursion["side"];
