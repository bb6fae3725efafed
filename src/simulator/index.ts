/** Flies invented flights with known truth: for samples, demonstrations and the measuring of accuracy. */
import type { Track } from "../track/track.ts";
import { APPROACH_SAMPLES } from "./approach-samples.ts";
import { drawnApproach } from "./approaches.ts";
import { ARC_AND_DESCENT_PATTERNS } from "./arc-patterns.ts";
import { everySecond, flyTrue, type TrueColumns } from "./flight.ts";
import { gpxText } from "./gpx.ts";
import { DRAWN_HOLDS } from "./hold-drawn.ts";
import { HOLD_SAMPLES } from "./hold-samples.ts";
import { ARC_AND_DESCENT_LESSONS } from "./lessons.ts";
import { NO_HOLDS } from "./no-hold.ts";
import { PATTERN_SCENARIOS } from "./patterns.ts";
import { intervalFor, receive } from "./receiver.ts";
import { SAMPLE_SCENARIOS } from "./samples.ts";
import type { Scenario } from "./scenario.ts";
import { truthOf } from "./tell.ts";
import { TRAINING } from "./training.ts";
import type { Truth } from "./truth.ts";

export { drawnApproach } from "./approaches.ts";
export type { TrueColumns } from "./flight.ts";
export { DRAWN_MODELS, KNOWN_MODELS } from "./models.ts";
export { FAULTS, type Fault, oneFault, oneFaultFinal } from "./one-fault.ts";
export { crossCountry, procedureTurn } from "./patterns.ts";
export { PILOTS, type PilotName, pilotLesson } from "./pilot-lesson.ts";
export type { Scenario } from "./scenario.ts";
export type { HoldSkill, Step } from "./script.ts";
export type { Truth } from "./truth.ts";

/** Every scenario by its name. */
export const SCENARIOS: Readonly<Record<string, Scenario>> = {
  ...SAMPLE_SCENARIOS,
  ...ARC_AND_DESCENT_LESSONS,
  ...Object.fromEntries(
    [
      ...HOLD_SAMPLES,
      ...PATTERN_SCENARIOS,
      ...ARC_AND_DESCENT_PATTERNS,
      TRAINING,
      ...DRAWN_HOLDS,
      ...NO_HOLDS,
      ...APPROACH_SAMPLES,
      drawnApproach("landing"),
      drawnApproach("missed"),
    ].map((scenario) => [scenario.name, scenario]),
  ),
};

/** Parts of a scenario put in the place of its own, whole: `{ logging: { every: 5 } }`. */
export type Overrides = Partial<Omit<Scenario, "name" | "brief">>;

/** A named scenario. Throws a RangeError that lists the known names. */
export function scenarioNamed(name: string, overrides: Overrides = {}): Scenario {
  const scenario = Object.hasOwn(SCENARIOS, name) ? SCENARIOS[name] : undefined;
  if (!scenario)
    throw new RangeError(`invalid scenario: ${name}; not one of ${Object.keys(SCENARIOS).join(", ")}`);
  return { ...scenario, ...overrides };
}

export interface SimulatedFlight {
  /** The log, as a receiver would have written it. */
  readonly track: Track;
  readonly truth: Truth;
  /** What the aircraft and the air truly did, each second. */
  readonly columns: TrueColumns;
}

/** Flies a scenario without making any text. The same seed gives the same flight. */
export function fly(scenario: Scenario, seed: number): SimulatedFlight {
  const interval = intervalFor(scenario.logging);
  const flight = flyTrue(scenario, seed, interval);
  const columns = everySecond(flight.columns, interval);
  return {
    track: receive(scenario, flight.columns, seed),
    truth: truthOf(scenario, seed, { ...flight, columns }),
    columns,
  };
}

/** Flies a named scenario: the log and the brief as text, and the truth to be written as JSON. */
export function flyScenario(
  name: string,
  seed: number,
  overrides: Overrides = {},
): { readonly gpx: string; readonly brief: string | null; readonly truth: Truth } {
  const scenario = scenarioNamed(name, overrides);
  const { track, truth } = fly(scenario, seed);
  return { gpx: gpxText(track, scenario.receiver.decimals), brief: scenario.brief, truth };
}
