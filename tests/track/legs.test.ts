import { describe, expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { fly } from "../support/flown.ts";
import { near } from "../support/near.ts";

describe("by construction: simulated flights", () => {
  it("finds each turn, its side and size, within 3 s of where it was flown", () => {
    let turns = 0;
    for (let seed = 1; seed <= 15; seed++) {
      const { track, truth } = fly({
        seed,
        wind: { from: 40 * seed, speed: 10 },
        steps: [
          { straight: 90 },
          { turn: 180 },
          { straight: 60 },
          { turn: -45 },
          { straight: 60 },
          { turn: 360 },
          { straight: 60 },
        ],
      });
      const motion = smoothTrack(track)!;
      const legs = findLegs(motion);
      const found = legs.filter((l) => l.kind === "turn");
      expect(found.map((l) => Math.sign(l.turn))).toEqual([1, -1, 1]);
      found.forEach((leg, i) => {
        turns++;
        // by the drift at both ends (up to 6 degrees each), overshoot and wander
        near(leg.turn, [180, -45, 360][i]!, 25, "deg");
      });
      let k = 0;
      for (const leg of found) {
        while (truth.turning[k] === 0) k++;
        near(leg.span.start, k, 3, "s");
        while (truth.turning[k] === 1) k++;
        near(leg.span.end, k, 4, "s");
      }
    }
    expect(turns).toBe(45);
  });

  it("finds no turn in a wandering straight", () => {
    for (let seed = 1; seed <= 10; seed++) {
      const legs = findLegs(smoothTrack(fly({ seed, steps: [{ straight: 1200 }] }).track)!);
      expect(legs.map((l) => l.kind)).toEqual(["straight"]);
    }
  });

  it("puts every row in exactly one leg, with gaps too", () => {
    const { track } = fly({ seed: 2, steps: [{ straight: 100 }, { turn: 200 }, { straight: 100 }] });
    const gapped = { ...track, time: track.time.map((t, i) => (i > 130 ? t + 120_000 : t)) };
    const motion = smoothTrack(gapped)!;
    const legs = findLegs(motion);
    expect(motion.spans).toHaveLength(2);
    let next = 0;
    for (const { span } of legs) {
      expect(span.start).toBe(next);
      expect(span.end).toBeGreaterThan(span.start);
      next = span.end;
    }
    expect(next).toBe(motion.length);
    expect(legs.some((l) => l.span.end === motion.spans[0]!.end)).toBe(true);
  });

  it("mirrors with the flight", () => {
    const { track } = fly({
      seed: 6,
      rounded: false,
      steps: [{ straight: 100 }, { turn: 120 }, { straight: 100 }],
    });
    const mirrored = { ...track, longitude: track.longitude.map((l) => 2 * 172.3 - l) };
    const a = findLegs(smoothTrack(track)!);
    const b = findLegs(smoothTrack(mirrored)!);
    expect(b.map((l) => l.span)).toEqual(a.map((l) => l.span));
    a.forEach((leg, i) => {
      near(b[i]!.turn, -leg.turn, 1e-3, "deg");
    });
  });

  it("does not turn an aircraft that taxis", () => {
    const { track } = fly({
      seed: 6,
      airspeed: 10,
      wind: { from: 0, speed: 0 },
      shear: 0,
      steps: [{ straight: 60 }, { turn: 180 }, { straight: 60 }],
    });
    expect(findLegs(smoothTrack(track)!).map((l) => l.kind)).toEqual(["straight"]);
  });
});
