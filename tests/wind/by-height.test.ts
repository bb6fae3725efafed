import { describe, expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind, windByHeight } from "../../src/wind/index.ts";
import type { FlownStep } from "../support/flown.ts";
import { fly } from "../support/flown.ts";
import { near } from "../support/near.ts";

const circle: readonly FlownStep[] = [{ straight: 60 }, { turn: 360 }, { straight: 60 }];
const climb: readonly FlownStep[] = [...circle, { climbTo: 5000, feetPerMinute: 500 }, ...circle];
const flown = (seed: number, steps = climb) => {
  const given = fly({ seed, steps, altitude: 3000, wind: { from: 270, speed: 20 } });
  const motion = smoothTrack(given.track)!;
  const wind = estimateWind(motion, findLegs(motion), { airspeed: null, winds: [] });
  return { ...given, motion, wind, bands: windByHeight(wind, motion) };
};

describe("by construction: a full turn at 3,000 ft, a climb and a full turn at 5,000 ft", () => {
  it("gives bands from the lowest up, each with the height and the time flown in it", () => {
    const { bands, motion } = flown(3);
    expect(bands.length).toBeGreaterThan(1);
    bands.forEach((band, i) => {
      expect(band.knowledge).toBe("full");
      expect(band.altitude).toBeGreaterThanOrEqual(band.low);
      expect(band.altitude).toBeLessThan(band.high);
      if (i > 0) expect(band.low).toBeGreaterThanOrEqual(bands[i - 1]!.high);
    });
    const flownFor = (motion.time[motion.length - 1]! - motion.time[0]!) / 1000;
    expect(bands.reduce((sum, { seconds }) => sum + seconds, 0)).toBeLessThanOrEqual(flownFor + 1);
  });

  it("holds the true mean of the band within the ellipse's long axis, over ten seeds nine times in ten", () => {
    let inside = 0;
    let asked = 0;
    for (let seed = 1; seed <= 10; seed++) {
      const { bands, motion, truth } = flown(seed);
      for (const band of bands) {
        let [east, north, n] = [0, 0, 0];
        for (let k = 0; k < motion.length; k++) {
          if (!(motion.altitude[k]! >= band.low && motion.altitude[k]! < band.high)) continue;
          east += truth.airEast[k]!;
          north += truth.airNorth[k]!;
          n++;
        }
        const toward = ((band.from! + 180) * Math.PI) / 180;
        const miss = Math.hypot(
          band.speed! * Math.sin(toward) - east / n,
          band.speed! * Math.cos(toward) - north / n,
        );
        asked++;
        if (miss <= band.ellipse95.major) inside++;
      }
    }
    expect(asked).toBeGreaterThan(15);
    expect(inside / asked).toBeGreaterThanOrEqual(0.9);
  });

  it("counts the time in a band once: a level flight has one or two bands that hold all its known rows", () => {
    const { bands, wind, motion } = flown(4, circle);
    const known = wind.alongFlight.knowledge.filter((k) => k === "full").length;
    expect(bands.length).toBeLessThanOrEqual(2);
    near(
      bands.reduce((sum, { seconds }) => sum + seconds, 0),
      known,
      20,
      "s",
    );
    expect(motion.length).toBeGreaterThan(known - 1);
  });

  it("is empty where direction and speed are known nowhere", () => {
    expect(flown(5, [{ straight: 900 }]).bands).toEqual([]);
  });
});
