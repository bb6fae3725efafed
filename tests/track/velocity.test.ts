/** Smoothed velocity against the simulator's truth: the limits that the project set itself, on seeds not used for tuning. */
import { describe, expect, it } from "vitest";
import type { TrueColumns } from "../../src/simulator/index.ts";
import type { Track } from "../../src/track/track.ts";
import { seeded } from "../support/flown.ts";
import { trueVelocity, velocityErrors } from "../support/velocity-error.ts";

const NAMES = ["one-360", "procedure-turn", "hold-direct", "vectors"];
const SEEDS = { first: 5000, count: 6 };

describe("by simulation: positions alone", () => {
  it.each([
    { every: 1, straight: 0.55, turning: 0.5 },
    { every: 5, straight: 0.7, turning: 0.55 },
  ])(
    "a log each $every s is within $straight kt straight and $turning kt turning",
    ({ every, straight, turning }) => {
      const errors = velocityErrors(NAMES, { every }, SEEDS);
      // a tenth more for turning: six seeds have some 40 turns
      expect(errors.straight.error).toBeLessThan(straight);
      expect(errors.turning.error).toBeLessThan(1.1 * turning);
      for (const doing of ["straight", "turning", "rolling"] as const)
        expect(errors[doing].coverage, doing).toBeGreaterThan(0.9);
    },
  );

  it("points drawn between plots 20 s apart are told from measured ones: turns within 8 kt, and the doubt says so", () => {
    const errors = velocityErrors(["one-360", "hold-any-fast"], { every: 5, plots: 20 }, SEEDS);
    expect(errors.turning.error).toBeLessThan(8);
    expect(errors.turning.coverage).toBeGreaterThan(0.85);
    expect(errors.straight.coverage).toBeGreaterThan(0.85);
  });
});

describe("by simulation: velocities that the log has besides", () => {
  type Maker = (
    c: TrueColumns,
    row: number,
    track: Track,
    k: number,
    normal: () => number,
  ) => readonly [number, number];
  const logging =
    (make: Maker) =>
    (track: Track, columns: TrueColumns, seed: number): Track => {
      const { normal } = seeded(seed);
      const made = Array.from(track.time, (t, k) =>
        make(columns, (t - track.time[0]!) / 1000, track, k, normal),
      );
      return {
        ...track,
        groundSpeed: Float64Array.from(made, ([e, n]) => Math.round(Math.hypot(e, n) * 50) / 50),
        trackAngle: Float64Array.from(
          made,
          ([e, n]) => (Math.round(Math.atan2(e, n) * 5729.578) / 100 + 360) % 360,
        ),
      };
    };
  const doppler =
    (sd: number): Maker =>
    (c, row, _track, _k, normal) => {
      const [east, north] = trueVelocity(c, row);
      return [east + (sd / 0.514444) * normal(), north + (sd / 0.514444) * normal()];
    };
  /** The step over so many points, as a logger without Doppler writes it. */
  const stepped =
    (back: number, ahead: number): Maker =>
    (_c, _row, track, k) => {
      const from = Math.max(0, Math.min(track.length - 2, k - back));
      const to = Math.min(track.length - 1, Math.max(from + 1, k + ahead));
      const hours = (track.time[to]! - track.time[from]!) / 3_600_000;
      const north = (track.latitude[to]! - track.latitude[from]!) * 60;
      const east =
        (track.longitude[to]! - track.longitude[from]!) * 60 * Math.cos(track.latitude[k]! / 57.29578);
      return [east / hours, north / hours];
    };
  const errors = (every: number, alter?: ReturnType<typeof logging>) =>
    velocityErrors(["procedure-turn", "hold-direct"], { every }, { first: 5000, count: 4 }, alter);

  it.each([1, 5])(
    "measured by Doppler to 0.2 m/s, logged each %i s: better, and the doubt is honest",
    (every) => {
      const without = errors(every);
      const used = errors(every, logging(doppler(0.2)));
      for (const doing of ["straight", "turning", "rolling"] as const) {
        expect(used[doing].error, doing).toBeLessThan(0.8 * without[doing].error);
        expect(used[doing].coverage, doing).toBeGreaterThan(0.88);
      }
    },
  );

  it.each([
    [1, 1, 0],
    [1, 1, 1],
    [1, 2, 2],
    [1, 5, 0],
    [5, 1, 0],
    [5, 1, 1],
  ])("logged each %i s, made from positions %i back and %i ahead: left alone", (every, back, ahead) => {
    expect(errors(every, logging(stepped(back, ahead)))).toEqual(errors(every));
  });
});
