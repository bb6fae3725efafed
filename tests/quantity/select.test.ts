/** The middle of values against the library simple-statistics, and any place against the values put in order. */
import fc from "fast-check";
import { median as medianOf } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { selectPlace } from "../../src/quantity/select.ts";
import { median } from "../../src/quantity/weigh.ts";

const numbers = fc.array(
  fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer({ min: -3, max: 3 })),
  {
    minLength: 1,
    maxLength: 200,
  },
);

describe("a value by its place", () => {
  it("stands where order would put it, none above it before and none below it after", () => {
    fc.assert(
      fc.property(numbers, fc.nat(), (values, at) => {
        const place = at % values.length;
        const moved = Float64Array.from(values);
        const found = selectPlace(moved, place);
        expect(found + 0).toBe(Float64Array.from(values).sort()[place]! + 0);
        expect(moved.subarray(0, place).every((v) => v <= found)).toBe(true);
        expect(moved.subarray(place).every((v) => v >= found)).toBe(true);
      }),
    );
  });

  it.each([
    ["rising", (i: number) => i],
    ["falling", (i: number) => -i],
    ["all alike", () => 1],
    ["rising to the middle and falling", (i: number) => Math.min(i, 999 - i)],
    ["a saw", (i: number) => i % 7],
  ])("simple-statistics: the middle of a thousand values, %s", (_, value) => {
    const values = Array.from({ length: 1000 }, (_, i) => value(i));
    expect(median(Float64Array.from(values))).toBe(medianOf(values));
    expect(median(Float64Array.from(values.slice(1)))).toBe(medianOf(values.slice(1)));
  });

  it("the middle leaves out what is not known, and leaves the values where they are", () => {
    const values = Float64Array.of(3, Number.NaN, 1, 2, 7);
    expect(median(values)).toBe(2.5);
    expect([...values]).toEqual([3, Number.NaN, 1, 2, 7]);
    expect(median(Float64Array.of(Number.NaN))).toBeNaN();
  });
});
