/** Every sentence that Hindtrack says. */
export { offArc } from "./arc-finding.ts";
export { asFineAs } from "./as-fine.ts";
export { flownCourse, flownHeading, variationText } from "./compass.ts";
export { betweenNm } from "./descent.ts";
export {
  exerciseSentence,
  lapSentences,
  otherFindings,
  type SideNote,
  sideNotes,
  whyNotMeasured,
} from "./exercise.ts";
export { findingSentence } from "./finding.ts";
export {
  habitEffect,
  habitInterval,
  habitMean,
  habitPractise,
  habitProof,
  habitSentence,
  habitSides,
  habitStatus,
  habitTitle,
  habitTolerance,
  habitToleranceFrom,
  habitTrend,
  practiseSentence,
} from "./habit.ts";
export {
  flightName,
  HABITS_RULES,
  habitsHead,
  habitsWhose,
  noPractise,
  pilotLine,
} from "./habits-whole.ts";
export { entryDirection, entryUntold } from "./hold.ts";
export { issueSentence } from "./issue.ts";
export { logCautions, noFlight } from "./log-cautions.ts";
export { needleSize } from "./measured.ts";
export { fileStem, shownName } from "./name.ts";
export * from "./number.ts";
export { type RacetrackWords, racetrackWords } from "./racetrack.ts";
export { TOP_WORDS } from "./top-words.ts";
export {
  decidedBy,
  decidingVerdict,
  NOT_JUDGED,
  overruleWords,
  type Standing,
  says,
  standing,
  verdictSentence,
  verdictTitle,
} from "./verdict.ts";
export { verdictReason } from "./verdict-reason.ts";
export { verdictConfidence, verdictLimit, verdictValue } from "./verdict-value.ts";
export {
  acrossWords,
  alongWords,
  isFull,
  isLight,
  restsOn,
  windDoubt,
  windHeadline,
  windLabel,
  windName,
  windSentence,
} from "./wind.ts";
