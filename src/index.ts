/** Hindtrack: a track log and a brief become a debrief. The one door. */

// whether the wheels were on the runway for certain
export { onWheels } from "./approach/facts.ts";
// what should have been flown
export type { Exercise as BriefExercise } from "./brief/brief.ts";
export {
  type BriefDraft,
  briefFromRoute,
  briefJsonSchema,
  briefText,
  briefToYaml,
  briefValues,
  type DraftExercise,
  readBrief,
  readStandard,
  resolveBrief,
  type WrittenValues,
  writtenBrief,
} from "./brief/index.ts";
// by which analysis documents are made
export { ANALYSIS_VERSION } from "./debrief/analysis-version.ts";
// the result: a document, and columns for charts beside it
export {
  type ApproachAdvice,
  type ApproachFacts,
  type ApproachRecord,
  type ArcFacts,
  type ArcRecord,
  type ArcRemedy,
  type ConstantDescent,
  type CourseFacts,
  type CourseRecord,
  type DebriefDocument,
  type DescentFacts,
  type DescentRecord,
  type DocumentExercise,
  type DocumentIssue,
  type DocumentLeg,
  documentSchema,
  type Excursion,
  type ExcursionRecord,
  type Finding,
  type HoldFacts,
  type HoldLap,
  type HoldRecord,
  type Overrule,
  type Racetrack,
  type Remark,
  type Verdict,
  type WhatWouldHaveWorked,
  type WindRecord,
} from "./debrief/document.ts";
// the recipe
export { type Debrief, type DebriefInput, debriefFlight } from "./debrief/index.ts";
export { debriefJsonSchema } from "./debrief/json-schema.ts";
// what the instructor wrote
export {
  type InstructorNotes,
  notesOf,
  withNotes,
  withOverrule,
  withoutOverrule,
  withRemark,
} from "./debrief/notes.ts";
export type {
  ApproachSeries,
  ArcSeries,
  CourseSeries,
  DescentSeries,
  ExerciseSeries,
  FlightSeries,
  HoldSeries,
  PathSeries,
} from "./debrief/series.ts";
// the user's own lists of points and runways
export {
  alongAcrossExact,
  courseBetween,
  distanceNm,
  joinPointLists,
  type KnownPoints,
  type ListedPoint,
  type ListedRunway,
  POINT_KINDS,
  type PointKind,
  type PointList,
  type Position,
  pointsNamed,
  positionOn,
  runwayEnd,
  runwaysNamed,
  searchPoints,
  variationAt,
} from "./geodesy/index.ts";
// what comes back over many flights
export {
  chooseFlights,
  type FlightChoice,
  type FlightLabels,
  flightsByPilot,
  type Habit,
  type HabitPoint,
  type HabitReport,
  type HabitStatus,
  habitsOf,
  type ObservedFlight,
  observeFlight,
  type Practise,
  practiseNext,
  type Shown,
  SMALL,
  shownBest,
} from "./habit/index.ts";
// holds: the racetrack as a line, and the same solver for the next flight
export {
  type AskedHold,
  answerOutlines,
  type HoldField,
  type HoldOutline,
  type RacetrackAnswer,
  type ReadHold,
  racetrackFor,
  readHold,
  type TypedHold,
  usualLegTime,
} from "./hold/index.ts";
// files in
export type { ByteSource, CsvColumn, ImportedLog, ReadOptions, Route, Waypoint } from "./import/imported.ts";
export {
  beginningOfTable,
  Cancelled,
  CSV_COLUMNS,
  type FlightLabel,
  isLabelTable,
  joinLogs,
  type LabelledFiles,
  type LabelTable,
  labelledFiles,
  pointOf,
  type ReadPoints,
  readAngle,
  readLabelTable,
  readLog,
  readPlaces,
  readPoints,
  readRunwayCourse,
  type TableBeginning,
} from "./import/index.ts";
export { direction, threeFigures } from "./quantity/angle.ts";
// what every report says, and what is wrong with an input
export { CAUTION } from "./quantity/caution.ts";
// the excursion that went farthest
export { type Cause, worstExcursion } from "./quantity/excursion-record.ts";
export { METRES_PER_FOOT, metresFromNauticalMiles, nauticalMilesFromMetres } from "./quantity/factor.ts";
export { type Issue, UnusableInput, type Where } from "./quantity/issue.ts";
// the variation that a compass has
export { compassVariation } from "./quantity/magnetic.ts";
// how a needle answers, for drawings
export { acrossAt, needleOf } from "./quantity/needle.ts";
export { outboundClock } from "./quantity/outbound-clock.ts";
// where a log is silent, for drawings alike
export { silenceLimit, stepsOf } from "./quantity/silence.ts";
// words, tables and maps
export * from "./report/index.ts";
// invented flights with known truth
export { flyScenario, SCENARIOS } from "./simulator/index.ts";
// how high a path crosses the threshold where no brief says so
export { THRESHOLD_CROSSING } from "./standard/approach-guidance.ts";
// what full scale of a needle means
export { NEEDLE_SCALES } from "./standard/needle.ts";
export type { TestStandard } from "./standard/test-standard.ts";
// what exercises are held against
export { TEST_STANDARDS } from "./standard/tolerance.ts";
// how a direction is spoken
export { altimeterDoubt95 } from "./track/index.ts";
