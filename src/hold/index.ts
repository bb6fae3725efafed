/** The door of the hold wing: what was flown against what the wind asked for, and the racetrack solved for a wind. */
export { racetrackDoubt } from "./doubt.ts";
export type { FoundHold, FoundLap } from "./found.ts";
export { type HoldMeasured, type HoldToMeasure, measureHold } from "./measure.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { RULES, ruleOutcome } from "./rule.ts";
