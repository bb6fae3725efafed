/** Two teardrop reversals in a row turn as a lap of a hold does: the second is told by its way out, which bends and is come back to. */
import { expect, it } from "vitest";
import { flySeed, holdsIn } from "./finding-meter.ts";

// of the seeds that the rule was chosen on; the gate in finding.test.ts flies others
it.each([32, 118, 175, 449, 570, 705, 898])("reversals of seed %i hold nowhere", (seed) => {
  expect(holdsIn(flySeed("teardrop-reversals", seed).track)).toEqual([]);
});

// a single lap whose pilot cuts back to the course
it.each([470, 596, 785, 883, 957])("the single lap of seed %i is a hold still", (seed) => {
  const [hold] = holdsIn(flySeed("hold-any", seed).track);
  expect(hold?.laps.length).toBe(flySeed("hold-any", seed).truth.truth.holds[0]!.laps.length);
});
