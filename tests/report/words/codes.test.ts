import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { DocumentExercise, Finding } from "../../../src/debrief/document.ts";
import { findingSentence, issueSentence } from "../../../src/report/index.ts";
import { ISSUE_WORDS } from "../../../src/report/words/issue-words.ts";
import { sampleDebrief } from "../../support/debriefed.ts";

const SRC = join(import.meta.dirname, "../../../src");
const files = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((f) => f.endsWith(".ts"));
const sources = files.map((file) => ({ file, text: readFileSync(join(SRC, file), "utf8") }));

/** Where codes are made: quoted behind these, before the next bracket or line's end. */
const MADE =
  /(?:\bcode: |\bcode = |\? |: )"([a-z]+(?:-[a-z]+)+)"|(?:tally\.add|errorAt|refuse|\berror|\.stop|unusable)\((?:[^"()]|\[[^\]]*\]|\([^)]*\))*?"([a-z]+(?:-[a-z]+)+)"/gs;
const codesIn = (wings: RegExp) => {
  const found = new Set<string>();
  for (const { file, text } of sources) {
    if (!wings.test(file)) continue;
    for (const match of text.matchAll(MADE)) found.add((match[1] ?? match[2])!);
  }
  return [...found].sort();
};

/** Kebab-case words in these places that are no issue codes: reasons, kinds, kinds of source. */
const NO_CODES = new Set([
  "hindtrack-debrief",
  "hindtrack-habits",
  "gpx-route",
  "written-true",
  "timed-placemark",
  "log-begins",
  "flown-again",
  "flown-as-well",
  "log-ends",
  "points-left-out",
  "log-silent-there",
  "turned-at-fix",
  "log-ends-at-fix",
  "log-begins-at-fix",
  "flown-other-way",
  "held-otherwise",
]);
const issueCodes = codesIn(/^(import|track(?!\/(cause|joining|weave)\b)|brief|debrief|cli)\//).filter(
  (c) => !NO_CODES.has(c),
);
/** Findings of courses, whose words are tried on the facts below. */
const FINDINGS = [...codesIn(/^(course\/finding|track\/cause)\.ts$/)].filter((c) => !/^no-/.test(c));
/** Findings of every kind of exercise. */
const ALL_FINDINGS = codesIn(
  /^((course|hold|approach|track|quantity)\/.*(finding|cause|unstable|as-flown|below-limits|before-established|silent-edges|turned-aside|straight-beside)|track\/(joining|reversal|told-excursion))\.ts$/,
).filter((c) => !/^no-|^in-time$/.test(c));

const BROKEN = /undefined|NaN|null|\[object/;

describe("every code that the source makes has words", () => {
  it("the scan finds codes of all wings", () => {
    for (const code of [
      "no-points",
      "broken-xml",
      "xml-too-deep",
      "no-times",
      "brief-unknown-fix",
      "brief-not-a-time",
    ])
      expect(issueCodes).toContain(code);
    expect(issueCodes.length).toBeGreaterThan(45);
    for (const code of [
      "tracked-within",
      "wind-uncorrected",
      "under-corrected",
      "over-corrected",
      "corrected-wrong-way",
    ])
      expect(FINDINGS).toContain(code);
  });

  it.each(issueCodes)("issue %s", (code) => {
    expect(Object.hasOwn(ISSUE_WORDS, code)).toBe(true);
  });

  it("no words stand for a code that is never made", () => {
    const all = sources
      .filter(({ file }) => !file.startsWith("report"))
      .map(({ text }) => text)
      .join("\n");
    const web = ["no-log-given", "web-page"];
    const idle = Object.keys(ISSUE_WORDS).filter((code) => !all.includes(`"${code}"`) && !web.includes(code));
    expect(idle).toEqual([]);
  });
});

const facts: Finding["facts"] = {
  side: "left",
  degrees: 7,
  trackTrueDeg: 265.5,
  trackMagneticDeg: 263,
  courseTrueDeg: 272.5,
  courseMagneticDeg: 270,
  silentS: 44,
  leadS: null,
  driftS: 70,
  quarterReached: true,
  worstNeedle: 0.4,
  worstNm: -0.31,
  meanNm: -0.1,
  doubt95Nm: 0.01,
  flownDeg: 1.4,
  neededDeg: 6.2,
  windAcrossKt: -11,
  windAcross95Kt: 3,
  reversals: 7,
  perMinute: 1.8,
  amplitudeDeg: null,
  periodS: null,
  overshootNm: 0.2,
  overshootNeedle: 0.3,
  angleDeg: 31,
  gaps: 2,
  share: 0.7,
  byNm: 0.21,
  longestS: 80,
};

describe("sentences of findings", () => {
  it("the scan finds codes of courses, arcs, descents and holds", () => {
    for (const code of [
      ...["tracked-within", "arc-drifted", "descent-begun-late", "rolled-out-short", "below-step-down"],
      ...["gap-in-exercise", "gap-beside-exercise", "turned-wrong-way", "other-inbound-course"],
    ])
      expect(ALL_FINDINGS).toContain(code);
  });

  it.each(ALL_FINDINGS)("%s is known to the words, whatever its facts", async (code) => {
    const { document } = await sampleDebrief("hold-outbound-flown-parallel");
    const sentence = findingSentence(
      { code, facts, evidence: { fromUtc: null, toUtc: null } },
      document.exercises[0]!,
    );
    expect(sentence.toLowerCase()).not.toBe(`${code.replaceAll("-", " ")}.`);
  });

  it.each(FINDINGS)("%s has words of its own: whole, one line, closed by a full stop", async (code) => {
    const { document } = await sampleDebrief("calm-and-tidy");
    const exercise: DocumentExercise = document.exercises[1]!;
    const finding: Finding = {
      code,
      facts: { ...facts, doubt95Deg: 1.6, silentS: code === "gap-in-exercise" ? 120 : 44 },
      evidence: { fromUtc: "2026-10-17T01:23:00Z", toUtc: null },
    };
    const sentence = findingSentence(finding, exercise);
    expect(sentence).not.toMatch(BROKEN);
    expect(sentence).toMatch(/^[A-Z][^\n]*\.$/);
    // not the fallback for codes without words
    expect(sentence).not.toBe(`${code.replaceAll("-", " ")}.`);
    // every angle that is a direction says M or T; every other one has a side, or is a doubt, a rate or a cut
    for (const [angle] of sentence.matchAll(/\b\d{3}°.?/g)) expect(angle).toMatch(/°[MT]$/);
  });
});

/** Facts as the source gives them are tried in the tests of each wing; here every key that words ask for is there. */
const asked = (code: string): Record<string, string | number> => {
  const given: Record<string, string | number> = {};
  const source = String(ISSUE_WORDS[code]);
  for (const [, key] of source.matchAll(/\bf\.(\w+)/g)) {
    given[key!] = new RegExp(`(Number|counted|were|metres|seconds)\\(f\\.${key}`).test(source) ? 3 : "X";
  }
  return { count: 3, ...given };
};

describe("sentences of issues", () => {
  it.each(Object.keys(ISSUE_WORDS))("%s is one whole line", (code) => {
    const sentence = issueSentence({
      code,
      severity: "error",
      where: { file: "log.gpx", line: 4 },
      facts: asked(code),
    });
    expect(sentence).not.toMatch(BROKEN);
    expect(sentence).toMatch(/^log\.gpx, line 4: [^\n]*\.$/);
  });

  it("control characters, line separators and very long texts of a file do not break the line", () => {
    const nasty = `a\nb\r\u0000\u001b[31m\u0085\u2028c${"x".repeat(5000)}`;
    const sentence = issueSentence({
      code: "brief-unknown-fix",
      severity: "error",
      where: { file: nasty, line: 4, path: nasty },
      facts: { ident: nasty, known: nasty, didYouMean: nasty },
    });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be there
    expect(sentence).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/);
    expect(sentence.length).toBeLessThan(1400);
  });

  it("text that turns the direction of writing round is tamed", () => {
    const sentence = issueSentence({
      code: "brief-unknown-fix",
      severity: "error",
      where: { file: "brief.yaml" },
      facts: { ident: "AB\u202e\u2066CD", known: "TARNO", didYouMean: null },
    });
    expect(sentence).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
  });

  it("a code without words is still told, with its facts", () => {
    const issue = { code: "never-heard-of", severity: "note", where: {}, facts: { a: 1 } } as const;
    expect(issueSentence(issue)).toBe("Never heard of (a 1)");
  });
});
