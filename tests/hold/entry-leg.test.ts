/** The outbound leg of a teardrop or parallel entry: its time is that of the whole leg, a wander of the heading and all. */
import { describe, expect, it } from "vitest";
import { debriefFlight } from "../../src/debrief/index.ts";
import { readLog } from "../../src/import/index.ts";
import { readBrief } from "../../src/index.ts";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";

describe("against the simulator's truth: the outbound leg of an entry", () => {
  // of a teardrop that asks for a small turn it is open whether the leg begins at the fix or where that turn is over
  it.each(["hold-outbound-flown-parallel", "hold-teardrop-left-turns"])("%s: within 5 s", async (name) => {
    const scenario = scenarioNamed(name);
    for (let seed = 5000; seed < 5012; seed++) {
      const { track, truth } = fly(scenario, seed);
      const log = await readLog([new TextEncoder().encode(gpxText(track, 6))], "hold.gpx");
      const { document } = debriefFlight({ log, brief: readBrief(scenario.brief!, "brief.yaml") });
      const hold = document.exercises.find(({ kind }) => kind === "hold");
      const told = hold?.kind === "hold" ? hold.facts?.entry?.outbound?.seconds : null;
      const [turn, leg] = truth.truth.holds[0]!.entryParts;
      const [fix, begun, ended] = [turn!.startUtc, leg!.startUtc, leg!.endUtc].map(Date.parse) as [
        number,
        number,
        number,
      ];
      const longest = name === "hold-teardrop-left-turns" ? ended - fix : ended - begun;
      expect(told, `seed ${seed}`).toBeGreaterThan((ended - begun) / 1000 - 5);
      expect(told, `seed ${seed}`).toBeLessThan(longest / 1000 + 5);
    }
  });
});
