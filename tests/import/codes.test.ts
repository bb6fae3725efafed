import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { READABLE, UNUSABLE } from "./expected.ts";

/** Codes whose case is no small file; each is caused in the test named. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  "xml-too-long": "hostile.test.ts",
  "archive-too-big": "hostile.test.ts",
  "no-places": "fixtures.test.ts",
  "no-point-headings": "points.test.ts",
  "place-without-ident": "points.test.ts",
  "place-repeated": "points.test.ts",
  "ident-repeated": "points.test.ts",
  "unknown-kind": "points.test.ts",
  "runway-without-direction": "points.test.ts",
  "runway-length-assumed": "points.test.ts",
  "runway-off-its-number": "points.test.ts",
  "runway-too-long": "points.test.ts",
  "runway-course-by-model": "points.test.ts",
  "recorded-twice": "join.test.ts",
  "untimed-not-joined": "join.test.ts",
  "no-usable-points": "../track/clean.test.ts",
};

const sources = ["../../src/import/", "../../src/track/"].flatMap((folder) => {
  const url = new URL(folder, import.meta.url);
  return readdirSync(url)
    .filter((name) => folder.includes("import") || name.startsWith("clean"))
    .map((name) => readFileSync(new URL(name, url), "utf8"));
});
const issued = new Set(
  sources.flatMap((text) =>
    [
      ...text.matchAll(/(?:tally\??\.add|refuse)\(\s*"([a-z-]+)"/g),
      ...text.matchAll(/code(?:: | = )"([a-z-]+)"/g),
      ...text.matchAll(/(?:\.stop\(|\? |: )"((?:[a-z]+-)+[a-z]+)"/g),
    ].map((match) => match[1]!),
  ),
);

describe("by construction: every code that reading and cleaning can give", () => {
  const caused = new Set([
    ...Object.values(READABLE).flatMap((e) => e.codes),
    ...Object.values(UNUSABLE).flat(),
  ]);

  it("is caused by a fixture, or in a test named here", () => {
    expect(issued.size).toBeGreaterThan(40);
    const missing = [...issued].filter(
      (code) => !caused.has(code) && !(code in ELSEWHERE) && !NOT_CODES.has(code),
    );
    expect(missing).toEqual([]);
  });

  it("is in the source: no fixture expects a code that nothing gives", () => {
    expect([...caused, ...Object.keys(ELSEWHERE)].filter((code) => !issued.has(code))).toEqual([]);
  });

  it.each(Object.entries(ELSEWHERE))("%s is caused in %s", (code, test) => {
    expect(readFileSync(new URL(test, import.meta.url), "utf8")).toContain(`"${code}"`);
  });
});

/** Words in the same places of the source that are no codes. */
const NOT_CODES = new Set(["utf-8", "timed-placemark"]);
