/** Heights by construction: straight climbs and levels of known rates, a row a second. */
import { describe, expect, it } from "vitest";
import { heightHeld } from "../../src/track/index.ts";
import { near } from "../support/near.ts";

/** Parts of a height: to a height in so many seconds. */
type Part = readonly [to: number, seconds: number];

function heights(from: number, parts: readonly Part[], every = 1) {
  const altitude = [from];
  let last = from;
  for (const [to, seconds] of parts) {
    const steps = Math.round(seconds / every);
    for (let k = 1; k <= steps; k++) altitude.push(last + ((to - last) * k) / steps);
    last = to;
  }
  return {
    clock: Float64Array.from(altitude, (_, i) => i * every),
    altitude: Float64Array.from(altitude),
    span: { start: 0, end: altitude.length },
  };
}

const heldOf = (from: number, parts: readonly Part[], target: number | null = 4000, every = 1) => {
  const { clock, altitude, span } = heights(from, parts, every);
  return heightHeld(clock, altitude, span, target);
};

describe("from where a briefed 4,000 ft is judged", () => {
  it("two points of like height on both sides of a silence are no level flight", () => {
    const { clock, altitude } = heights(5000, [
      [4550, 56],
      [4500, 1],
      [4000, 62],
      [4000, 120],
    ]);
    const late = clock.map((seconds, i) => (i > 56 ? seconds + 100 : seconds));
    const held = heightHeld(late, altitude, { start: 0, end: altitude.length }, 4000);
    expect(held.onWay).toMatchObject({ way: "descent", level: null });
    // the same heights seen level for that time are told
    const [upper, lower] = [altitude.subarray(0, 57), altitude.subarray(57)];
    const seen = Float64Array.from([...upper, ...new Array(100).fill(4525), ...lower]);
    const level = heightHeld(
      seen.map((_, i) => i),
      seen,
      { start: 0, end: seen.length },
      4000,
    ).onWay?.level;
    near(level!.at, 4525, 25, "ft");
  });

  it("held from the beginning: all of it", () => {
    expect(heldOf(4000, [[4000, 300]])).toEqual({ row: 0, onWay: null, allAlong: null });
  });

  it("150 ft off at the beginning and put right: all of it, for that is no climb to it", () => {
    expect(
      heldOf(3850, [
        [4000, 30],
        [4000, 300],
      ]).row,
    ).toBe(0);
  });

  it("1,500 ft climbed at 500 ft/min first: from where that ended, 180 s later, to the softness of a climb (40 ft, 5 s)", () => {
    const { row, onWay, allAlong } = heldOf(2500, [
      [4000, 180],
      [4000, 300],
    ]);
    near(row, 180, 6, "s");
    expect(onWay).toMatchObject({ way: "climb", from: 2500, level: null });
    expect(allAlong).toBeNull();
  });

  it("1,500 ft descended first, logged each 10 s: from where that ended", () => {
    const { row, onWay } = heldOf(
      5500,
      [
        [4000, 180],
        [4000, 300],
      ],
      4000,
      10,
    );
    near(row * 10, 180, 10, "s");
    expect(onWay?.way).toBe("descent");
  });

  it("held 200 ft off by the log, as a GPS may have it: from where it came to that height", () => {
    near(
      heldOf(2500, [
        [4200, 204],
        [4200, 300],
      ]).row,
      204,
      6,
      "s",
    );
  });

  it("600 ft past it and back: from the crossing at 180 s", () => {
    const { row, onWay } = heldOf(2500, [
      [4600, 252],
      [4000, 72],
      [4000, 300],
    ]);
    near(row, 180, 6, "s");
    expect(onWay?.way).toBe("climb");
  });

  it("on through it to 5,000 ft: from the crossing", () => {
    near(heldOf(2500, [[5000, 300]]).row, 180, 6, "s");
  });

  it("reached, and lost 3 minutes later: from where it was reached, with what was lost", () => {
    near(
      heldOf(2500, [
        [4000, 180],
        [4000, 180],
        [4600, 60],
        [4600, 200],
      ]).row,
      180,
      6,
      "s",
    );
  });

  it("climbed all along and never there: nothing is left out, and it says so", () => {
    expect(heldOf(2000, [[3500, 180]])).toEqual({ row: 0, onWay: null, allAlong: "climb" });
    expect(heldOf(6000, [[4700, 180]]).allAlong).toBe("descent");
  });

  it("climbed to 3,500 ft and kept there: judged from there, 500 ft low", () => {
    const { row, allAlong } = heldOf(2500, [
      [3500, 120],
      [3500, 300],
    ]);
    near(row, 120, 20, "s");
    expect(allAlong).toBeNull();
  });

  it("level at 3,000 ft for 2 minutes before the climb: told with it", () => {
    const { row, onWay } = heldOf(3000, [
      [3000, 120],
      [4000, 120],
      [4000, 300],
    ]);
    near(row, 240, 6, "s");
    near(onWay!.level!.at, 3000, 20, "ft");
    near(onWay!.level!.seconds, 120, 20, "s");
  });

  it("a step of 30 s on the way is none", () => {
    expect(
      heldOf(2500, [
        [3000, 60],
        [3000, 30],
        [4000, 120],
        [4000, 300],
      ]).onWay!.level,
    ).toBeNull();
  });

  it("away from it is no way to it", () => {
    expect(heldOf(4500, [[6000, 180]])).toEqual({ row: 0, onWay: null, allAlong: null });
  });

  it("up and down on the way is not judged as a climb", () => {
    expect(
      heldOf(3000, [
        [3700, 60],
        [2600, 120],
        [4000, 160],
        [4000, 300],
      ]).row,
    ).toBe(0);
  });

  it("without a briefed height a climb of 1,500 ft is on purpose, one of 300 ft is not", () => {
    expect(heldOf(2500, [[4000, 180]], null).allAlong).toBe("climb");
    expect(heldOf(2500, [[2800, 180]], null).allAlong).toBeNull();
  });

  it("rows without a height are passed over", () => {
    const { clock, altitude, span } = heights(2500, [
      [4000, 180],
      [4000, 300],
    ]);
    altitude.fill(Number.NaN, 0, 20);
    near(heightHeld(clock, altitude, span, 4000).row, 180, 6, "s");
    altitude.fill(Number.NaN);
    expect(heightHeld(clock, altitude, span, 4000).row).toBe(0);
  });
});
