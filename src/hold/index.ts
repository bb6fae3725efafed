/** The door of the hold wing: the racetrack solved for the wind, its doubt, and what the rules of thumb come to. */
export { racetrackDoubt } from "./doubt.ts";
export { type HoldLeg, type HoldQuestion, solveRacetrack } from "./racetrack.ts";
export { RULES, ruleOutcome } from "./rule.ts";
