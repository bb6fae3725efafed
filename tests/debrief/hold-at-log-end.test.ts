/** A hold whose log ends, or begins, in flight about its fix, without a whole lap, is not said to be not flown. Truth: the simulator's, whose holds were flown. */
import { describe, expect, it } from "vitest";
import { scenarioNamed } from "../../src/simulator/index.ts";
import { debriefCut, ofLap } from "../hold/log-cut.ts";

const SEEDS = [5201, 5202];

describe.each(["hold-direct-well-flown", "hold-by-distance"])("%s", (name) => {
  it.each([
    ["soon after the fix", ofLap(0, "utc", 20)],
    ["on the first outbound leg", ofLap(0, "outboundUtc", 25)],
  ] as const)("the log ends %s", (_, to) => {
    for (const seed of SEEDS) {
      const { words, verdict } = debriefCut(name, seed, { to });
      expect(words, `seed ${seed}`).toMatch(/cannot be told: the log ends at .* seconds after its fix/);
      expect(verdict("hold-entry")).toMatchObject({ verdict: "cannot tell", reason: "log-ends-at-fix" });
    }
  });

  it("the log begins on the last inbound leg", () => {
    for (const seed of SEEDS) {
      const base = scenarioNamed(name);
      const hold = base.script.find((step) => step.do === "hold")!;
      const { laps, inbound: heading } = hold as Extract<typeof hold, { do: "hold" }>;
      const script = [...base.script, { do: "heading", heading, seconds: 300 } as const];
      const { words, verdict } = debriefCut({ ...base, script }, seed, {
        from: ofLap(laps - 1, "inboundUtc", 10),
      });
      expect(words, `seed ${seed}`).toMatch(/cannot be told: the log begins at .* seconds before its fix/);
      expect(verdict("hold-entry")).toMatchObject({ verdict: "cannot tell", reason: "log-begins-at-fix" });
    }
  });
});

it("flown straight on over the fix until the log ends: not flown", () => {
  const base = scenarioNamed("hold-direct-well-flown");
  const heading = Number(base.start.heading);
  const script = [{ do: "heading", heading, seconds: 750 }] as const;
  const { words, verdict } = debriefCut({ ...base, script }, 5201, {});
  expect(words).toBe("Not found on this flight.");
  expect(verdict("hold-entry").verdict).toBe("not flown");
});
