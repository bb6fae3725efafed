import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDecimal } from "../../src/import/decimal.ts";

describe("ECMA-262 Number() on the same text", () => {
  it("reads every finite number as Number does, to the last bit", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
        expect(readDecimal(String(x))).toBe(Number(String(x)));
      }),
      { numRuns: 2000 },
    );
  });

  it("reads positions and heights of 0 to 10 decimals as Number does", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 20000, noNaN: true }),
        fc.integer({ min: 0, max: 10 }),
        (x, decimals) => {
          const text = x.toFixed(decimals);
          expect(readDecimal(text)).toBe(Number(text));
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe("XML Schema Part 2, 3.2.3 (decimal): lexical forms", () => {
  it.each([
    ["-1.23", -1.23],
    ["12678967.543233", 12678967.543233],
    ["+100000.00", 100000],
    ["210", 210],
    [".5", 0.5],
    ["5.", 5],
    [" \n51.5\t", 51.5],
    ["1e2", 100],
    ["35.60000000000000000000000001", 35.6],
  ])("reads %j", (text, value) => expect(readDecimal(text)).toBe(value));

  it.each([
    "",
    " ",
    "51,5",
    "51.5N",
    "1.2.3",
    "--5",
    "+",
    ".",
    "0x10",
    "1e",
    "1e+",
    "Infinity",
    "INF",
    "NaN",
    "1e999",
    "1 2",
  ])("refuses %j", (text) => expect(readDecimal(text)).toBeNaN());
});
