/** The second of two holds at one fix, come to against its sector and turned round at once: the pass after that turn is no direct entry. Truth: the simulator's. */
import { expect, it } from "vitest";
import { type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import { debriefCut } from "./log-cut.ts";

const BASE = scenarioNamed("hold-direct-well-flown");

/** A right-hand hold, on past the fix, back to it, and left round into a left-hand one on the same course. */
function twoHolds(away: number, from: number): Scenario {
  const first = BASE.script.find((step) => step.do === "hold")!;
  const hold = { ...(first as Extract<typeof first, { do: "hold" }>), laps: 3 };
  const { inbound: heading } = hold;
  const second = { ...hold, turns: "left", entry: "direct", exercise: "Hold at TARNO, left" } as const;
  const script = [
    hold,
    { do: "heading", heading, seconds: away } as const,
    second,
    { do: "heading", heading, seconds: 90 } as const,
  ];
  const line = BASE.brief!.match(/ {2}- \{ hold: .*\n/)![0];
  return {
    ...BASE,
    wind: { ...BASE.wind, from },
    script,
    brief: BASE.brief!.replace(line, line + line.replace("right", "left")),
  };
}

it.each([
  [120, 330, 5520],
  [120, 310, 5521],
  [180, 195, 5580],
])("%i s past the fix and back in a wind from %i, seed %i", (away, from, seed) => {
  const { exercise, words, verdict } = debriefCut(twoHolds(away, from), seed, { which: 1 });
  expect(exercise.facts?.turns).toBe("left");
  expect(exercise.facts?.entry?.flown).toBeNull();
  expect(verdict("hold-entry").verdict).toBe("cannot tell");
  expect(words).not.toMatch(/irect entry|at the fix asks/);
});
