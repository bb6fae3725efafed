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
  HoldFacts,
  HoldLap,
  HoldOutline,
  HoldRecord,
  HoldSeries,
  PathSeries,
  Racetrack,
  RacetrackAnswer,
  Verdict,
  WindRecord,
} from "../../src/index.ts";

export type NeedleScaleFacts = CourseFacts["scale"];
export {
  acrossAt,
  clock,
  clockOutbound,
  decidingVerdict,
  flownDirection,
  isFull,
  needleOf,
  offCourse,
  says,
  sided,
  trueDirection,
  windLabel,
  windName,
} from "../../src/index.ts";
export type Side = Excursion["side"];
