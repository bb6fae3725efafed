/** Where the log begins in the hold no passage of the fix is told as the arrival; where the passage that is seen may not be it, neither heading nor sector is. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import { atTarno, TARNO } from "../../src/simulator/orsa-vale.ts";
import { debriefCut, ofLap } from "./log-cut.ts";

const NAMES = ["hold-direct-well-flown", "hold-teardrop-left-turns", "hold-by-distance"];
const SEEDS = [5101, 5102];
const CUTS = [
  ["in the turn outbound", ofLap(0, "utc", 30)],
  ["at the end of that turn", ofLap(0, "outboundUtc", 0)],
  ["on the outbound leg", ofLap(0, "outboundUtc", 25)],
  ["in the turn inbound", ofLap(0, "inboundTurnUtc", 25)],
  ["on the inbound leg", ofLap(0, "inboundUtc", 10)],
  ["on a later outbound leg", ofLap(1, "outboundUtc", 20)],
] as const;

describe.each(CUTS)("a log that begins %s", (_, from) => {
  it.each(NAMES.flatMap((name) => SEEDS.map((seed) => [name, seed] as const)))(
    "%s, seed %i: the entry cannot be told, because of that",
    (name, seed) => {
      const { exercise, words, verdict } = debriefCut(name, seed, { from });
      expect(exercise.facts?.entry?.flown).toBeNull();
      expect(verdict("hold-entry")).toMatchObject({ verdict: "cannot tell", reason: "log-begins-in-hold" });
      expect(words).toContain("cannot be told: the log begins in flight, in the hold or close before it");
      expect(words).not.toMatch(/at the fix asks/);
    },
  );
});

it.each(NAMES)("%s: an arrival of which the log shows the last 3½ minutes is told", (name) => {
  for (const seed of SEEDS) {
    const { exercise } = debriefCut(name, seed, { from: ({ t0 }) => Date.parse(t0) - 210_000 });
    expect(exercise.facts?.entry?.untold, `seed ${seed}`).toBeUndefined();
    expect(exercise.facts?.entry?.flown, `seed ${seed}`).not.toBeNull();
  }
});

/** From the teardrop's sector, well inside it (FAA AIM FIG 5-3-4), and turned as if it were direct. */
function wrongEntry(seed: number): Scenario {
  const base = scenarioNamed("hold-direct-well-flown");
  const heading = (atTarno(247) + 140) % 360;
  return {
    ...base,
    start: { ...base.start, heading, position: destination(TARNO, heading + 180, 9 * 1852) },
    wind: { ...base.wind, from: (seed * 117) % 360 },
    script: base.script.map((step) => (step.do === "hold" ? { ...step, entry: "direct" } : step)),
  };
}

it("where it is not clear which entry was flown, no heading and no sector at the fix is told", () => {
  let unclear = 0;
  for (let seed = 5001; seed <= 5006; seed++) {
    const { exercise, words } = debriefCut(wrongEntry(seed), seed, {});
    if (exercise.facts?.entry?.flown !== null) continue;
    unclear++;
    expect(words, `seed ${seed}`).toContain("What entry was flown is not clear");
    expect(words, `seed ${seed}`).not.toMatch(/at the fix asks|the fix was passed/);
  }
  expect(unclear).toBeGreaterThan(0);
});

it("a hold turned to the other side: the words do not tell an entry that the verdict cannot", () => {
  const base = scenarioNamed("hold-direct-well-flown");
  const brief = base.brief!.replace("turns: right", "turns: left");
  for (const seed of SEEDS) {
    const { words, verdict } = debriefCut({ ...base, brief }, seed, {});
    expect(verdict("hold-entry")).toMatchObject({ verdict: "cannot tell", reason: "wrong-way" });
    expect(words).not.toContain("irect entry");
    expect(words).toContain("cannot be told: the turns were flown to the other side");
  }
});
