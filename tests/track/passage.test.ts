import { describe, expect, it } from "vitest";
import { passageRow } from "../../src/track/index.ts";

const row = (...metres: number[]) => passageRow(Float64Array.from(metres), 0, metres.length);

describe("by construction: when a place was passed", () => {
  it("is the nearest row of one passage", () => {
    expect(row(900, 500, 100, 60, 300, 700)).toBe(3);
  });
  it("is the first of two about as near, as when turning over a fix", () => {
    expect(row(900, 500, 120, 500, 900, 400, 30, 400)).toBe(2);
  });
  it("is the second where the first was a mere approach", () => {
    expect(row(3000, 1500, 1400, 2500, 3000, 900, 30, 400)).toBe(6);
  });
  it("is not a wobble of the receiver on the way in", () => {
    expect(row(900, 500, 510, 300, 60, 300)).toBe(4);
  });
  it("passes over what is not known", () => {
    expect(row(Number.NaN, 900, Number.NaN, 60, 300)).toBe(3);
  });
});
