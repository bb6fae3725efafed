/** Measured numbers in words: one rounding up and down, and one second alone. */
import { expect, it } from "vitest";
import { rate, seconds } from "../../../src/report/words/measured.ts";

it("a rate is rounded alike whether up or down", () => {
  expect([rate(545), rate(-545)]).toEqual(["550 ft/min", "550 ft/min"]);
});
it("one second is no seconds", () => {
  expect([seconds(1.2), seconds(0), seconds(2)]).toEqual(["1 second", "0 seconds", "2 seconds"]);
});
