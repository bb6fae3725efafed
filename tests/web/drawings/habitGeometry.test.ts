/** The panel of a habit keeps its scale whatever is on it. */
import { describe, expect, it } from "vitest";
import type { Habit } from "../../../src/index.ts";
import { flightTicks, PANEL, panelPaths, panelScale } from "../../../web/drawings/habitGeometry.ts";
import { near } from "../../support/near.ts";

const habit = (changes: Partial<Habit> = {}): Habit => ({
  ...{ id: "descent-late", unit: "s", oneSided: false, tolerance: 30, status: "habit", mean: null },
  ...{
    chance: null,
    chanceBeyond: null,
    exercises: 0,
    flights: 0,
    trend: null,
    points: [],
    seenOn: [],
    untold: {},
  },
  ...changes,
});
const point = (flight: number, value: number, doubt95 = 0) => ({ flight, exercise: 0, value, doubt95 });

describe("habit panel", () => {
  it("two tolerances are 14.3 mm, at 96 px to the inch", () => {
    const { y } = panelScale(habit(), 10);
    near(y(0) - y(2), (14.3 * 96) / 25.4, 1e-9, "px");
    near(y(-1) - y(0), (7.15 * 96) / 25.4, 1e-9, "px");
  });

  it("right of course and too little of a correction lie below the line, late and past above", () => {
    const side = (changes: Partial<Habit>) => Math.sign(PANEL.middle - panelScale(habit(changes), 5).y(1));
    expect(side({})).toBe(1);
    expect(side({ id: "needle-side", unit: "share" })).toBe(-1);
    expect(side({ id: "final-side", unit: "share" })).toBe(-1);
    expect(side({ id: "hold-outbound", unit: "part" })).toBe(-1);
  });

  it("a value past the end becomes an arrow there, and is no dot", () => {
    const scale = panelScale(habit(), 2);
    const one = panelPaths(habit({ points: [point(0, 5, 1)] }), scale);
    expect([one.dots, one.whiskers]).toEqual(["", ""]);
    expect(one.past).not.toBe("");
    const in_ = panelPaths(habit({ points: [point(0, 1, 0.2)] }), scale);
    expect(in_.dots).not.toBe("");
    expect(in_.whiskers).not.toBe("");
    expect(in_.past).toBe("");
  });

  it("flights stand from edge to edge in order; a single one in the middle", () => {
    const { x } = panelScale(habit(), 11);
    expect(x(0)).toBeGreaterThan(PANEL.left);
    expect(x(10)).toBeLessThan(PANEL.right);
    near(x(5), (x(0) + x(10)) / 2, 1e-9);
    near(panelScale(habit(), 1).x(0), (PANEL.left + PANEL.right) / 2, 1e-9);
  });

  it.each([1, 2, 7, 23, 100, 1000, 40_000])(
    "%i flights: a few ticks, the first among them, none beyond",
    (n) => {
      const ticks = flightTicks(n);
      expect(ticks[0]).toBe(1);
      expect(ticks.length).toBeLessThan(7);
      expect(Math.max(...ticks)).toBeLessThanOrEqual(n);
    },
  );
});
