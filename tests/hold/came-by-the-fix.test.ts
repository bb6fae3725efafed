/** A hold whose aircraft passed its fix on the way out, turned round, and came back to it along the same line: a direct entry, unlike a parallel one. Truth: the simulator's. */
import { expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { fly, type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import { TARNO } from "../../src/simulator/orsa-vale.ts";
import { holdsIn } from "./finding-meter.ts";

const SEEDS = [5501, 5502, 5503, 5504, 5505, 5506];
const MILE = 1852;
/** Distance legs, as long as the way out and back: nothing but the turn tells the two apart. */
const BASE = scenarioNamed("hold-by-distance");

function entryOf(scenario: Scenario, seed: number): string | null | undefined {
  return holdsIn(fly(scenario, seed).track)[0]?.entry;
}

/** Inbound 1 to 3 NM past the fix the aircraft turns up, flies out over it, round, and back. */
function outAndBack(seed: number): Scenario {
  const hold = BASE.script.find((step) => step.do === "hold");
  if (hold?.do !== "hold") throw new Error("a sample without a hold");
  const { inbound } = hold;
  const out = (inbound + 180) % 360;
  const wind = { ...BASE.wind, from: inbound, speed: 8 };
  return {
    ...BASE,
    wind,
    start: {
      ...BASE.start,
      heading: out,
      position: destination(TARNO, inbound, (3 + (seed % 3)) * MILE),
    },
    script: [
      { do: "heading", heading: out, seconds: 100 + 33 * (seed % 3) + 190 },
      { do: "heading", heading: inbound, seconds: 20, turn: "left" },
      { ...hold, entry: "direct", turns: "right" },
      { do: "heading", heading: inbound, seconds: 120 },
    ],
  };
}

it.each(SEEDS)("seed %i: out over the fix, half a circle, and back is a direct entry", (seed) => {
  expect(entryOf(outAndBack(seed), seed)).toBe("direct");
});

it.each(SEEDS)("seed %i: out, and back by a cut to the course, is a parallel entry", (seed) => {
  const script = BASE.script.map((step) =>
    step.do === "hold" ? ({ ...step, entry: "parallel" } as const) : step,
  );
  const hold = script.find((step) => step.do === "hold")!;
  const heading = (hold.do === "hold" ? hold.inbound + 200 : 0) % 360;
  const start = { ...BASE.start, heading, position: destination(TARNO, heading + 180, 9 * MILE) };
  expect(entryOf({ ...BASE, start, script }, seed)).toBe("parallel");
});
