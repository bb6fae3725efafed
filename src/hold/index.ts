/** The door of the hold wing: what was flown against what the wind asked for, the racetrack solved for a wind and its line, and the same for a hold as typed. */

export { type AskedRacetrack, answerOutlines, type RacetrackAnswer, racetrackFor } from "./answer.ts";
export { racetrackDoubt } from "./doubt.ts";
export type { FoundHold, FoundLap } from "./found.ts";
export { type HoldMeasured, type HoldToMeasure, measureHold } from "./measure.ts";
export { type HoldOutline, type RacetrackShape, racetrackOutline } from "./outline.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { readHold } from "./read-hold.ts";
export { RULES, ruleOutcome } from "./rule.ts";
export type { AskedHold, HoldField, ReadHold, TypedHold } from "./typed-hold.ts";
