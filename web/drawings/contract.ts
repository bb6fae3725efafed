/** The one place where the drawings meet the analysis: its types, its needle and its words. */
import type { CourseFacts, Excursion } from "../../src/index.ts";

export type {
  ApproachFacts,
  ApproachRecord,
  ApproachSeries,
  ArcFacts,
  ArcRecord,
  ArcSeries,
  CourseFacts,
  CourseRecord,
  CourseSeries,
  DebriefDocument,
  DescentFacts,
  DescentRecord,
  DescentSeries,
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
  count,
  decidingVerdict,
  flownDirection,
  isFull,
  METRES_PER_FOOT,
  nauticalMilesFromMetres,
  needleOf,
  offCourse,
  says,
  sided,
  THRESHOLD_CROSSING,
  trueDirection,
  windLabel,
  windName,
} from "../../src/index.ts";
export type Side = Excursion["side"];
