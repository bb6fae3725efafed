import { describe, expect, it } from "vitest";
import { descentAfter, descentBefore } from "../../src/track/index.ts";
import { near } from "../support/near.ts";

/** Heights each second: held, then changed at so many ft/min, for seconds each. */
function heights(start: number, parts: readonly (readonly [fpm: number, seconds: number])[], wander = 0) {
  const rows: number[] = [];
  let height = start;
  for (const [fpm, seconds] of parts) {
    for (let k = 0; k < seconds; k++) {
      rows.push(height + wander * Math.sin((2 * Math.PI * rows.length) / 60));
      height += fpm / 60;
    }
  }
  const altitude = Float64Array.from(rows);
  return { altitude, clock: Float64Array.from(rows, (_, i) => i), last: rows.length - 1 };
}

describe("by construction: a steady descent past the point of an earlier one, with a row of which the log has no height", () => {
  it.each([160, 150])("row %d: begun at the earlier point all the same, for there is no level", (gap) => {
    const { altitude, clock, last } = heights(5500, [
      [0, 60],
      [-600, 200],
    ]);
    const whole = descentAfter(clock, altitude, last, 3500, 150)!;
    expect(whole.start).toBe(150);
    altitude[gap] = Number.NaN;
    const found = descentAfter(clock, altitude, last, 3500, 150)!;
    expect(found.start).toBe(150);
    near(found.from, whole.from, 11, "ft"); // a second at 600 ft/min
  });
});

describe("by construction: where a descent began", () => {
  it.each([
    [
      "level, then 500 ft/min",
      [
        [0, 300],
        [-500, 200],
      ],
      300,
    ],
    [
      "level again at the end",
      [
        [0, 300],
        [-500, 200],
        [0, 90],
      ],
      300,
    ],
    [
      "with a step of two minutes in it",
      [
        [0, 300],
        [-500, 60],
        [0, 120],
        [-600, 100],
      ],
      300,
    ],
    [
      "after a cruise of ten minutes at a lower height",
      [
        [0, 60],
        [-500, 120],
        [0, 600],
        [-500, 100],
      ],
      780,
    ],
    [
      "after a climb",
      [
        [500, 240],
        [0, 60],
        [-700, 120],
      ],
      300,
    ],
    [
      "slow, 200 ft/min",
      [
        [0, 300],
        [-200, 400],
      ],
      300,
    ],
  ] as const)("%s", (_, parts, began) => {
    for (const wander of [0, 20]) {
      const { altitude, clock, last } = heights(4000, parts, wander);
      const found = descentBefore(clock, altitude, last)!;
      near(found.start, began, wander ? 8 : 1, "s", `wander ${wander} ft`);
    }
  });

  it("tells the height that was held before", () => {
    const { altitude, clock, last } = heights(
      4000,
      [
        [0, 300],
        [-500, 200],
      ],
      20,
    );
    near(descentBefore(clock, altitude, last)!.from, 4000, 20, "ft");
  });

  it("goes back over 7 minutes level at the height that was wanted, not at another", () => {
    const parts = [
      [0, 150],
      [-900, 160],
      [0, 430],
    ] as const;
    const { altitude, clock, last } = heights(5500, parts, 0);
    near(descentBefore(clock, altitude, last, 3100)!.start, 150, 1, "s");
    expect(descentBefore(clock, altitude, last, 1800)).toBeNull();
    expect(descentBefore(clock, altitude, last)).toBeNull();
  });

  it("goes back over a dip below the height that was wanted, climbed back from; not over a climb from far below", () => {
    const dip = (feet: number) =>
      heights(6000, [
        [0, 150],
        [-600, 300],
        [-600, feet / 10],
        [0, 30],
        [600, feet / 10],
        [0, 60],
      ]);
    const { altitude, clock, last } = dip(410);
    near(descentBefore(clock, altitude, last, 3000)!.start, 150, 1, "s");
    near(descentBefore(clock, altitude, last, 3000)!.from, 6000, 1, "ft");
    const below = heights(6000, [
      [0, 150],
      [-600, 340],
      [0, 400],
    ]);
    near(descentBefore(below.clock, below.altitude, below.last, 3000)!.start, 150, 1, "s");
    const deep = dip(1200);
    expect(descentBefore(deep.clock, deep.altitude, deep.last, 3000)).toBeNull();
  });

  it("is none where the height was held, within 100 ft, or where there is no height", () => {
    const held = heights(4000, [[0, 600]], 45);
    expect(descentBefore(held.clock, held.altitude, held.last)).toBeNull();
    const climb = heights(3000, [
      [0, 60],
      [500, 120],
    ]);
    expect(descentBefore(climb.clock, climb.altitude, climb.last)).toBeNull();
    expect(descentBefore(held.clock, held.altitude.fill(Number.NaN), held.last)).toBeNull();
  });
});
