import { describe, expect, it } from "vitest";
import type { Verdict } from "../../../src/index.ts";
import { verdictPlace } from "../../../web/drawings/verdictGeometry.ts";

const verdict = (value: number | null, doubt95: number | null, limit: number | null): Verdict =>
  ({ value, doubt95, limit }) as Verdict;

describe("where a verdict stands, by construction", () => {
  it("inside, across and past the limit", () => {
    expect(verdictPlace(verdict(0.25, 0.05, 0.5))).toEqual({ at: 0.5, whisker: [0.4, 0.6], past: null });
    expect(verdictPlace(verdict(200, 30, 100))?.whisker).toEqual([1.7, 2]);
    expect(verdictPlace(verdict(500, null, 100))).toEqual({ at: 2, whisker: [2, 2], past: 5 });
  });

  it("where nothing is allowed, what was found stands past the limit as far as its doubt makes it sure", () => {
    expect(verdictPlace(verdict(120, 120, 0))).toEqual({ at: 1.5, whisker: [1, 2], past: null });
    expect(verdictPlace(verdict(0, 100, 0))).toEqual({ at: 1, whisker: [0.5, 1.5], past: null });
    expect(verdictPlace(verdict(40, null, 0))?.at).toBe(2);
    expect(verdictPlace(verdict(0, null, 0))?.at).toBe(1);
  });

  it("nowhere without a value or a limit", () => {
    expect(verdictPlace(verdict(null, null, 0.5))).toBeNull();
    expect(verdictPlace(verdict(0.5, null, null))).toBeNull();
  });
});
