/** A single lap is the least that is taken for a hold: told from what else turns twice, and not missed where it is long, or where next to no turn led into it. Seeds that the rules were chosen on; the gate in finding.test.ts flies others. */
import { expect, it } from "vitest";
import { turnFrom } from "../../src/quantity/angle.ts";
import { flySeed, holdsIn } from "./finding-meter.ts";

it.each([
  [1328, "by a cut to the course, its turn inbound is one of 103 degrees"],
  [2100, "by distance, 257 s out and 228 s in"],
  [1924, "from a direct entry whose turn over the fix is one of 40 degrees"],
])("is found in seed %i: %s", (seed) => {
  const { track, truth } = flySeed("hold-any", seed);
  const [hold] = truth.truth.holds;
  const [found] = holdsIn(track);
  expect([found?.turns, found?.entry, found?.laps.length]).toEqual([hold!.turn, hold!.entry, 1]);
  expect(Math.abs(turnFrom(hold!.inboundTrueDeg, found!.inbound))).toBeLessThan(12);
});

it.each([15, 307, 363, 447, 543])("an arrival to a circuit is none: seed %i", (seed) => {
  expect(holdsIn(flySeed("rectangular-circuits", seed).track)).toEqual([]);
});
