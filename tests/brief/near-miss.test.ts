import { describe, expect, it } from "vitest";
import { nearMiss } from "../../src/brief/near-miss.ts";

describe("by construction: the word that was probably meant", () => {
  it.each([
    ["TARMO", ["TARNO", "BELVO"], "TARNO"],
    ["tarno", ["TARNO", "BELVO"], "TARNO"],
    ["form", ["to", "from"], "from"],
    ["altitude", ["altitude_ft", "between"], "altitude_ft"],
    ["KESTI", ["TARNO", "BELVO"], null],
    ["xy", ["to", "from"], null],
    ["", ["to", "from"], null],
    ["x".repeat(10_000), ["to"], null],
  ])("%.12s", (written, known, meant) => {
    expect(nearMiss(written, known)).toBe(meant);
  });
});
