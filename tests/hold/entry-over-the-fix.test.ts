/** A teardrop that passed over the fix is the entry, however short the wind made the laps that follow, and shows that a single lap is one of a hold. Seeds that the rules were chosen on; the gate in finding.test.ts flies others. */
import { expect, it } from "vitest";
import { flySeed, holdsIn } from "./finding-meter.ts";

it.each([
  [1387, "outbound legs of 36 s after an entry of 71 s"],
  [1708, "outbound legs of 32 s after an entry of 64 s"],
  [2882, "one lap, which comes back 0.7 NM aside"],
])("seed %i: %s", (seed) => {
  const { track, truth } = flySeed("hold-any", seed);
  const [hold] = truth.truth.holds;
  const found = holdsIn(track);
  expect(found.map(({ turns, entry, laps }) => [turns, entry, laps.length])).toEqual([
    [hold!.turn, "teardrop", hold!.laps.length],
  ]);
});
