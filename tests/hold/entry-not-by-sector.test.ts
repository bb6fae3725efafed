/** Entries flown against their sector: the verdict must rest on what was flown, not on the sector that it is held against. */
import { expect, it } from "vitest";
import type { DebriefInput } from "../../src/debrief/index.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { destination } from "../../src/geodesy/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { readBrief } from "../../src/index.ts";
import { fly, type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import { atTarno, TARNO } from "../../src/simulator/orsa-vale.ts";

const ENTRIES = ["direct", "teardrop", "parallel"] as const;
type Entry = (typeof ENTRIES)[number];
/** Well inside the sectors of FAA AIM FIG 5-3-4 for right turns: heading at the fix less the inbound course. */
const ARRIVALS: readonly (readonly [number, Entry])[] = [
  [35, "direct"],
  [80, "direct"],
  [-40, "direct"],
  [130, "teardrop"],
  [150, "teardrop"],
  [165, "teardrop"],
  [205, "parallel"],
  [235, "parallel"],
];

function verdictOf(arriving: number, entry: Entry, seed: number): string {
  const base = scenarioNamed("hold-direct-well-flown");
  const heading = (atTarno(247) + arriving + 360) % 360;
  const scenario: Scenario = {
    ...base,
    start: { ...base.start, heading, position: destination(TARNO, heading + 180, 9 * 1852) },
    wind: { ...base.wind, from: (seed * 117) % 360, speed: 8 + 6 * (seed % 4) },
    script: base.script.map((step) => (step.do === "hold" ? { ...step, entry } : step)),
  };
  const { track } = fly(scenario, seed);
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  const { document } = debriefFlight({
    log: { ...log, ...more } as unknown as DebriefInput["log"],
    brief: readBrief(scenario.brief!, "brief.yaml"),
    standard: standardNamed("instrument-rating-us")!,
  });
  return document.exercises[0]!.verdicts.find(({ criterion }) => criterion === "hold-entry")!.verdict;
}

it("of 32 entries of another sector at most two are said to be right; of 16 by their sector at most one is not", () => {
  const off: string[] = [];
  const by: string[] = [];
  for (const seed of [5001, 5002])
    for (const [arriving, asked] of ARRIVALS)
      for (const entry of ENTRIES) (entry === asked ? by : off).push(verdictOf(arriving, entry, seed));
  expect([off.length, by.length]).toEqual([32, 16]);
  expect(off.filter((verdict) => verdict === "met").length).toBeLessThanOrEqual(2);
  expect(off.filter((verdict) => verdict === "not met").length).toBeGreaterThanOrEqual(10);
  expect(by.filter((verdict) => verdict !== "met").length).toBeLessThanOrEqual(1);
});
