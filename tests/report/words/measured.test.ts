/** Measured numbers in words: one rounding up and down, and one second alone. */
import { expect, it } from "vitest";
import { needleSize, rate, seconds } from "../../../src/report/words/measured.ts";

it("a rate is rounded alike whether up or down", () => {
  expect([rate(545), rate(-545)]).toEqual(["550 ft/min", "550 ft/min"]);
});
it("one second is no seconds", () => {
  expect([seconds(1.2), seconds(0), seconds(2)]).toEqual(["1 second", "0 seconds", "2 seconds"]);
});
it("a needle past full scale is so many times that, and no part of it", () => {
  expect([needleSize(-0.42), needleSize(1), needleSize(5.48)]).toEqual([
    "0.42 of full scale",
    "1.00 of full scale",
    "5.48 times full scale",
  ]);
});
