/** The legs of a debrief: signs that a reader relies on. */
import { describe, expect, it } from "vitest";
import { SAMPLES, sampleDebrief } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

describe("FAA-H-8083-25, from memory: drift is the angle between heading and track, away from the wind", () => {
  it.each(SAMPLES)(
    "a wind that pushes to the right carries the track right of the heading: %s",
    async (name) => {
      const { document } = await sampleDebrief(name);
      const legs = document.legs.filter((leg) => Math.abs(leg.driftDeg ?? 0) >= 2);
      // where the log does not tell the wind it tells no drift
      const across = document.legs.some(
        (leg) => leg.driftDeg !== null && Math.abs(leg.wind.acrossKt ?? 0) >= 5,
      );
      if (document.wind!.knowledge === "full" && across) expect(legs.length).toBeGreaterThan(0);
      for (const { driftDeg, headingTrueDeg, trackTrueDeg, wind } of legs) {
        expect(Math.sign(wind.acrossKt!)).toBe(Math.sign(driftDeg!));
        // 0.02: three numbers rounded to 0.01
        near((headingTrueDeg! + driftDeg! - trackTrueDeg + 540) % 360, 180, 0.02, "degrees");
      }
    },
  );
});
