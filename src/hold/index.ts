/** The door of the hold wing: the racetrack solved for the wind, its doubt and its line, what the rules of thumb come to, and the same for a hold as typed. */
export { type AskedRacetrack, answerOutlines, type RacetrackAnswer, racetrackFor } from "./answer.ts";
export type { AskedHold, HoldField, ReadHold, TypedHold } from "./asked.ts";
export { racetrackDoubt } from "./doubt.ts";
export { type HoldOutline, type RacetrackShape, racetrackOutline } from "./outline.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { readHold } from "./read-hold.ts";
export { RULES, ruleOutcome } from "./rule.ts";
