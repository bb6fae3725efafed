/** One tolerant comparator: the message gives value, expected, limit and unit. */
import { expect } from "vitest";

export function near(actual: number, expected: number, tolerance: number, unit = "", label = ""): void {
  const miss = Math.abs(actual - expected);
  if (!(miss <= tolerance)) {
    expect.fail(`${label} ${actual} ${unit} is ${miss} from ${expected}, more than ${tolerance}`.trim());
  }
}

/** Like `near` for directions: 359.9 is near 0.1. */
export function nearDirection(actual: number, expected: number, tolerance: number, label = ""): void {
  const turn = ((((actual - expected) % 360) + 540) % 360) - 180;
  if (!(Math.abs(turn) <= tolerance)) {
    expect.fail(`${label} ${actual}° is ${turn}° from ${expected}°, more than ${tolerance}°`.trim());
  }
}
