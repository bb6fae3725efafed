/** Flies invented flights with known truth: for samples, demonstrations and the measuring of accuracy. */
import type { Track } from "../track/track.ts";
import { flyTrue } from "./flight.ts";
import { gpxText } from "./gpx.ts";
import { receive } from "./receiver.ts";
import { SAMPLE_SCENARIOS } from "./samples.ts";
import type { Scenario } from "./scenario.ts";
import { type Truth, truthOf } from "./truth.ts";

export type { Scenario } from "./scenario.ts";
export type { Truth } from "./truth.ts";

/** Every scenario by its name. */
export const SCENARIOS: Readonly<Record<string, Scenario>> = { ...SAMPLE_SCENARIOS };

/** Flies a scenario: the log as columns, and the truth. The same seed gives the same flight. */
export function fly(scenario: Scenario, seed: number): { readonly track: Track; readonly truth: Truth } {
  const flight = flyTrue(scenario, seed);
  return { track: receive(scenario, flight.columns, seed), truth: truthOf(scenario, seed, flight) };
}

/** Flies a named scenario: the files to write, as text, and the truth to write as JSON. */
export function flyScenario(
  name: string,
  seed: number,
): { readonly gpx: string; readonly brief: string | null; readonly truth: Truth } {
  const scenario = SCENARIOS[name];
  if (!scenario)
    throw new RangeError(`invalid scenario: ${name} (known: ${Object.keys(SCENARIOS).join(", ")})`);
  const { track, truth } = fly(scenario, seed);
  return { gpx: gpxText(track, scenario.receiver.decimals), brief: scenario.brief, truth };
}
