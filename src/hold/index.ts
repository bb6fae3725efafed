/** The door of the hold wing: holds found in a flight; the racetrack solved for the wind, its doubt, and what the rules of thumb come to. */
export { racetrackDoubt } from "./doubt.ts";
export { findHolds, type HoldHints } from "./find.ts";
export type { FoundHold, FoundLap, HoldEntry, LapTimes } from "./found.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { RULES, ruleOutcome } from "./rule.ts";
