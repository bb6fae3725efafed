import { expect, it } from "vitest";
import { toCartesian } from "../../src/track/cartesian.ts";
import { fitNoise } from "../../src/track/noise.ts";
import { fly } from "../support/flown.ts";

const fitted = (white: number) => {
  const { track } = fly({ seed: 12, white, steps: [{ straight: 300 }, { turn: 360 }, { straight: 300 }] });
  const place = new Float64Array(3 * track.length);
  const seconds = track.time.map((t) => (t - track.time[0]!) / 1000);
  for (let k = 0; k < track.length; k++) toCartesian(track.latitude[k]!, track.longitude[k]!, place, 3 * k);
  return fitNoise(
    { seconds, position: place, extra: null, velocity: null },
    { axes: 3, free: 2, jerkShare: 1, driftShare: 1 },
    [{ start: 0, end: track.length }],
  ).measurement;
};

it("by construction: a receiver with 0.4 m of noise is met with the least variance, one with 4 m with about 16 m2", () => {
  expect(fitted(0.4)).toBe(0.25); // 0.16 m2, and 1.1 m of rounding squared over 12
  // the candidates on either side of 16 m2 are allowed
  expect(fitted(4)).toBeGreaterThan(6);
  expect(fitted(4)).toBeLessThan(41);
});
