/** The door of the hold wing: holds found in a flight, measured against what their wind asked for; the racetrack solved for a wind. */
export { holdAgainst, type PublishedHold } from "./against.ts";
export { racetrackDoubt } from "./doubt.ts";
export { findHolds, type HoldHints } from "./find.ts";
export type { FoundHold, FoundLap, HoldEntry, LapTimes } from "./found.ts";
export { type HoldMeasured, type HoldToMeasure, measureHold } from "./measure.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { RULES, ruleOutcome } from "./rule.ts";
