import { describe, expect, it } from "vitest";
import { smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { type Flown, type FlownOptions, fly } from "../support/flown.ts";
import { near, nearDirection } from "../support/near.ts";

const STEPS = [{ straight: 200 }, { turn: 360 }, { straight: 150 }, { turn: -90 }, { straight: 150 }];

/** Vector error of the smoothed velocity over many flights, kt: rms, straight and turning, 5 s or more from a change. */
function velocityErrors(options: Partial<FlownOptions>, seeds: number) {
  const sums = { straight: [0, 0], turning: [0, 0], stated: [0, 0] };
  for (let seed = 1; seed <= seeds; seed++) {
    const { track, truth } = fly({ seed: 300 + seed, steps: STEPS, ...options });
    const motion = smoothTrack(track)!;
    for (let k = 1; k < motion.length - 1; k++) {
      const e = motion.velocityEast[k]! - truth.velocityEast[k]!;
      const n = motion.velocityNorth[k]! - truth.velocityNorth[k]!;
      const into = truth.turning[k] ? sums.turning : sums.straight;
      into[0]! += e * e + n * n;
      into[1]!++;
      sums.stated[0]! += 2 * motion.velocitySd[k]! ** 2;
      sums.stated[1]!++;
    }
  }
  const rms = ([sum, count]: number[]) => Math.sqrt(sum! / count!);
  return { straight: rms(sums.straight), turning: rms(sums.turning), stated: rms(sums.stated) };
}

describe("by construction: simulated flights with receiver noise, velocity against truth", () => {
  // limits: 1.25 times what the project was planned on (0.53 and 0.46 kt at 1 s; 0.70 and 0.55 at 5 s), since rolls in and out are counted in
  it.each([
    { every: 1 as const, straight: 0.66, turning: 0.7 },
    { every: 5 as const, straight: 0.95, turning: 1.2 },
    { every: "adaptive" as const, straight: 1.6, turning: 1.2 },
  ])("is within limits for a log every $every s", ({ every, straight, turning }) => {
    const errors = velocityErrors({ every }, 12);
    expect(errors.straight).toBeLessThan(straight);
    expect(errors.turning).toBeLessThan(turning);
    // the doubt it states is of the size of the error it makes
    expect(errors.stated / Math.hypot(errors.straight, errors.turning)).toBeGreaterThan(0.4);
    expect(errors.stated / errors.straight).toBeLessThan(1.6);
  });

  it("smooths far better than differences of positions do", () => {
    const { track, truth } = fly({ seed: 77, steps: [{ straight: 400 }] });
    const motion = smoothTrack(track)!;
    let own = 0;
    let differences = 0;
    for (let k = 1; k < track.length - 1; k++) {
      own += (motion.velocityNorth[k]! - truth.velocityNorth[k]!) ** 2;
      const north = ((track.latitude[k + 1]! - track.latitude[k - 1]!) * 110_950) / 2 / (1852 / 3600);
      differences += (north - truth.velocityNorth[k]!) ** 2;
    }
    expect(own).toBeLessThan(differences / 2);
  });
});

describe("by construction: a place that moves evenly over the ellipsoid", () => {
  /** 100 m/s along a meridian or parallel in small equal steps of latitude and longitude. */
  function even(latitude: number, longitude: number, dLatitude: number, dLongitude: number, n = 120): Track {
    const wrap = (l: number) => ((l + 540) % 360) - 180;
    return {
      name: "even",
      kind: "simulated",
      length: n,
      time: Float64Array.from({ length: n }, (_, i) => 1.8e12 + 1000 * i),
      latitude: Float64Array.from({ length: n }, (_, i) => latitude + i * dLatitude),
      longitude: Float64Array.from({ length: n }, (_, i) => wrap(longitude + i * dLongitude)),
      altitude: Float64Array.from({ length: n }, (_, i) => 1000 + 10 * i),
      segment: new Int32Array(n),
      line: new Int32Array(n),
    };
  }

  it("crosses the antimeridian without a jump", () => {
    const motion = smoothTrack(even(35, 179.97, 0, 0.0011))!;
    // 0.0011 degrees of the parallel at 35 degrees: 91,288.8 m to a degree (any table of WGS84), in knots
    for (let k = 5; k < 115; k++) {
      near(motion.velocityEast[k]!, (0.0011 * 91288.8) / (1852 / 3600), 0.05, "kt");
      near(motion.velocityNorth[k]!, 0, 0.05, "kt");
      expect(Math.abs(motion.longitude[k]!)).toBeGreaterThan(179.8);
    }
  });

  it("passes over the pole at an even speed", () => {
    const up = even(89.95, 20, 0.0009, 0);
    const track = {
      ...up,
      longitude: up.longitude.map((l, i) => (up.latitude[i]! > 90 ? l - 180 : l)),
      latitude: up.latitude.map((l) => (l > 90 ? 180 - l : l)),
    };
    const motion = smoothTrack(track)!;
    // 0.0009 degrees of the meridian at the pole: 111,693.9 m to a degree (any table of WGS84)
    for (let k = 5; k < 115; k++)
      near(motion.groundSpeed[k]!, (0.0009 * 111693.9) / (1852 / 3600), 0.05, "kt");
    nearDirection(motion.trackAngle[10]!, 0, 0.1);
    nearDirection(motion.trackAngle[110]!, 180, 0.1);
  });

  it("climbs as the heights say", () => {
    const motion = smoothTrack(even(35, 170, 0.0009, 0))!;
    near(motion.verticalSpeed[60]!, 600, 1, "ft/min");
    near(motion.altitude[60]!, 1600, 1, "ft");
  });
});

describe("gaps and what is missing", () => {
  const flown: Flown = fly({ seed: 3, steps: [{ straight: 300 }] });
  const without = (from: number, to: number): Track => {
    const keep = (_: unknown, i: number) => i < from || i >= to;
    const t = flown.track;
    return {
      ...t,
      length: t.length - (to - from),
      time: t.time.filter(keep),
      latitude: t.latitude.filter(keep),
      longitude: t.longitude.filter(keep),
      altitude: t.altitude.filter(keep),
      segment: t.segment.filter(keep),
      line: t.line.filter(keep),
    };
  };
  it("splits after 30 s of silence and not before", () => {
    expect(smoothTrack(without(100, 125))!.spans).toHaveLength(1);
    expect(smoothTrack(without(100, 140))!.spans).toEqual([
      { start: 0, end: 100 },
      { start: 100, end: flown.track.length - 40 },
    ]);
  });
  it("is null without times, and leaves out single points without", () => {
    const { track } = flown;
    expect(smoothTrack({ ...track, time: track.time.map(() => Number.NaN) })).toBeNull();
    const some = smoothTrack({ ...track, time: track.time.map((t, i) => (i === 50 ? Number.NaN : t)) })!;
    expect(some.length).toBe(track.length - 1);
  });
  it("has no NaN but in heights that the log lacks", () => {
    const { track } = flown;
    const motion = smoothTrack({
      ...track,
      altitude: track.altitude.map((h, i) => (i > 150 ? Number.NaN : h)),
    })!;
    for (const key of [
      "latitude",
      "velocityEast",
      "trackAngle",
      "turnRate",
      "positionSd",
      "velocitySd",
    ] as const) {
      expect(motion[key].some((v) => !Number.isFinite(v))).toBe(false);
    }
    expect(motion.altitude.findIndex((h) => Number.isNaN(h))).toBe(181); // 30 s beyond the last height
  });
  it("does not change what it is given", () => {
    const before = flown.track.latitude.slice();
    smoothTrack(flown.track);
    expect(flown.track.latitude).toEqual(before);
  });
});
