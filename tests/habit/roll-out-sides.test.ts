/** Turns rolled out late, flown by the simulator: the habit has the side that was turned to, on the sheet's own turns. */
import { describe, expect, it } from "vitest";
import { observeFlight } from "../../src/habit/index.ts";
import { flyScenario, scenarioNamed } from "../../src/simulator/index.ts";
import { debriefOf } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const WANDER = 2;

describe.each([1, 2, 3])("turns to the left held on 15° past by the pilot's model, seed %d", (seed) => {
  it("the left ones are told past, the right ones are not, each by the turns of the document to that side", async () => {
    const { pilot } = scenarioNamed("calm-and-tidy");
    const { gpx, brief } = flyScenario("calm-and-tidy", seed, { pilot: { ...pilot, lateToLeft: 15 } });
    const { document } = await debriefOf(gpx, brief);
    const turns = document.legs.filter(({ pastDeg }) => typeof pastDeg === "number");
    const { observations } = observeFlight(document, { id: "one" });
    for (const [side, sign] of [
      ["left", -1],
      ["right", 1],
    ] as const) {
      const own = turns.filter(({ turnDeg }) => Math.sign(turnDeg) === sign).map(({ pastDeg }) => pastDeg!);
      const told = observations.filter(({ tendency }) => tendency === `roll-out-${side}`);
      expect(told.length).toBeGreaterThan(0);
      for (const { value, tolerance } of told) {
        const past = value * tolerance + WANDER;
        expect(past).toBeGreaterThanOrEqual(Math.min(...own) - 0.01);
        expect(past).toBeLessThanOrEqual(Math.max(...own) + 0.01);
        // the wing is levelled while it is held on: two thirds of it and more are seen
        if (side === "left") near(past, 13, 4, "°");
        else near(past, WANDER, 3, "°");
      }
    }
  });
});
