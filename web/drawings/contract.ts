/** The one place where the drawings meet the analysis: its types, its needle and its words. */
import type { CourseFacts, Excursion } from "../../src/index.ts";

export type {
  CourseFacts,
  CourseRecord,
  CourseSeries,
  DebriefDocument,
  DocumentExercise,
  DocumentLeg,
  Excursion,
  FlightSeries,
  PathSeries,
  Verdict,
  WindRecord,
} from "../../src/index.ts";

export type NeedleScaleFacts = CourseFacts["scale"];
export {
  acrossAt,
  clock,
  decidingVerdict,
  flownDirection,
  isFull,
  needleOf,
  says,
  sided,
  trueDirection,
  windLabel,
  windName,
} from "../../src/index.ts";
export type Side = Excursion["side"];
