/** Holds found blind in simulated flights whose truth is known; seeds from 5000 on were never tuned on. */
import { describe, expect, it } from "vitest";
import { findHolds } from "../../src/hold/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { flyHold } from "./unseen-holds.ts";

describe("findHolds", () => {
  it("finds nearly every hold, its side and its laps", () => {
    let found = 0;
    let laps = 0;
    for (let seed = 5000; seed < 5060; seed++) {
      const { track, truth } = flyHold(seed);
      const motion = smoothTrack(track)!;
      const hold = findHolds(motion, findLegs(motion))[0];
      const true_ = truth.truth.holds[0]!;
      if (hold?.turns === true_.turn) found++;
      if (hold?.laps.length === true_.laps.length) laps++;
    }
    expect(found).toBeGreaterThanOrEqual(58);
    expect(laps).toBeGreaterThanOrEqual(57);
  });
});
