import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";

function reasons(text: string): string[] {
  try {
    readBrief(text, "brief.yaml");
  } catch (error) {
    if (error instanceof UnusableInput) return error.issues.map((issue) => String(issue.facts.reason));
    throw error;
  }
  return [];
}

describe("by construction: a brief that is not written as one is told why in plain words", () => {
  it.each([
    ["brief: 1\nfixes: { A: { lat: 1\n", /bracket is opened and never closed/],
    ['brief: 1\ntitle: "Lesson\n', /quotation mark is opened and never closed/],
    ["brief: 1\ntitle: Lesson 6: holds\n", /two colons stand on one line/],
    ["brief: 1\nexercises:\n\t- { course: 241 }\n", /a tab stands where the line begins/],
  ])("case %#", (text, expected) => {
    const found = reasons(text);
    expect(found.length).toBeGreaterThan(0);
    expect(found.join("; ")).toMatch(expected);
    expect(found.join(" ")).not.toMatch(/flow|scalar|mapping|implicit|node|YAML/i);
  });
});
