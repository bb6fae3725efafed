/** The door of the hold wing: holds found in a flight, measured against what their wind asked for; the racetrack solved for a wind, its line, and the same for a hold as typed. */
export { holdAgainst, type PublishedHold } from "./against.ts";
export { type AskedRacetrack, answerOutlines, type RacetrackAnswer, racetrackFor } from "./answer.ts";
export { usualLegTime } from "./asked.ts";
export { racetrackDoubt } from "./doubt.ts";
export { findHolds, type HoldHints } from "./find.ts";
export type { FoundHold, FoundLap, HoldEntry, LapTimes } from "./found.ts";
export { type HoldMeasured, type HoldToMeasure, measureHold } from "./measure.ts";
export { type HoldOutline, type RacetrackShape, racetrackOutline } from "./outline.ts";
export { solveRacetrack } from "./racetrack.ts";
export type { HoldLeg, HoldQuestion } from "./racetrack-question.ts";
export { readHold } from "./read-hold.ts";
export { RULES, ruleOutcome } from "./rule.ts";
export type { AskedHold, HoldField, ReadHold, TypedHold } from "./typed-hold.ts";
