import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/index.ts";
import { type Issue, UnusableInput } from "../../src/quantity/issue.ts";
import { issueSentence } from "../../src/report/index.ts";

const FIXES = `fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 2.5 }
  BELVO: { lat: 35.668, lon: 172.069 }
`;
/** Lines 1 to 5 are the head, exercises begin on line 6 at column 5. */
const withExercises = (...exercises: string[]) =>
  `brief: 1\n${FIXES}exercises:\n${exercises.map((e) => `  - ${e}\n`).join("")}`;
const GOOD = "{ course: 218, to: TARNO }";

/** All issues of a text, whether it was usable or not. */
function issuesOf(text: string, file = "lesson.yaml"): readonly Issue[] {
  try {
    return readBrief(text, file).issues;
  } catch (error) {
    if (error instanceof UnusableInput) return error.issues;
    throw error;
  }
}
const errorsOf = (text: string) => issuesOf(text).filter((i) => i.severity === "error");

describe("each problem has its code, line and column", () => {
  const cases: [label: string, exercise: string, code: string, column: number, facts: object][] = [
    [
      "course of 400",
      "{ course: 400, to: TARNO }",
      "brief-course-out-of-range",
      15,
      { value: "400", least: 0, most: 360 },
    ],
    ["course of -1", "{ course: -1, to: TARNO }", "brief-course-out-of-range", 15, { value: "-1" }],
    ["course of 361T", "{ course: 361T, to: TARNO }", "brief-course-out-of-range", 15, { value: "361T" }],
    ["course in words", "{ course: north, to: TARNO }", "brief-not-a-direction", 15, { value: "north" }],
    [
      "course as list",
      "{ course: [218], to: TARNO }",
      "brief-wrong-type",
      15,
      { expected: "direction", found: "list" },
    ],
    ["inbound of 370", "{ hold: TARNO, inbound: 370 }", "brief-course-out-of-range", 29, { value: "370" }],
    [
      "unknown fix",
      "{ course: 218, to: TARMO }",
      "brief-unknown-fix",
      24,
      { ident: "TARMO", didYouMean: "TARNO", known: "TARNO, BELVO" },
    ],
    [
      "unknown fix of a leg",
      "{ leg: [TARNO, KESTI] }",
      "brief-unknown-fix",
      20,
      { ident: "KESTI", didYouMean: null },
    ],
    [
      "misspelt key",
      "{ course: 218, to: TARNO, scal: vor }",
      "brief-unknown-key",
      31,
      { key: "scal", didYouMean: "scale" },
    ],
    [
      "key without its unit",
      "{ course: 218, to: TARNO, altitude: 3000 }",
      "brief-unknown-key",
      31,
      { key: "altitude", didYouMean: "altitude_ft" },
    ],
    [
      "form for from",
      "{ course: 218, form: TARNO }",
      "brief-unknown-key",
      20,
      { key: "form", didYouMean: "from" },
    ],
    ["no fix", "{ course: 218 }", "brief-missing-key", 5, { key: "to", or: "from" }],
    ["to and from", "{ course: 218, to: TARNO, from: BELVO }", "brief-both-to-and-from", 5, {}],
    [
      "no radius",
      "{ arc: TARNO, from_radial: 1, to_radial: 90 }",
      "brief-missing-key",
      5,
      { key: "radius_nm" },
    ],
    [
      "an arc that begins where it ends",
      "{ arc: TARNO, radius_nm: 10, from_radial: 300, to_radial: 300 }",
      "brief-arc-without-length",
      63,
      { from: "300°M", to: "300°M" },
    ],
    [
      "unknown scale",
      "{ course: 218, to: TARNO, scale: vot }",
      "brief-not-allowed",
      38,
      { value: "vot", didYouMean: "vor" },
    ],
    [
      "thousands parted by a point",
      "{ course: 218, to: TARNO, altitude_ft: 4.500 }",
      "brief-not-allowed",
      44,
      { value: 4.5, allowed: "whole feet, as in 4500" },
    ],
    [
      "angular scale on a leg",
      "{ leg: [TARNO, BELVO], scale: vor }",
      "brief-angular-scale-on-leg",
      35,
      { scale: "vor", allowed: "rnav-5, rnav-2, rnav-1, rnav-0.3" },
    ],
    [
      "text for a number",
      "{ course: 218, to: TARNO, altitude_ft: high }",
      "brief-wrong-type",
      44,
      { expected: "number", found: "text", value: "high" },
    ],
    [
      "number for a fix",
      "{ course: 218, to: 7 }",
      "brief-wrong-type",
      24,
      { expected: "text", found: "number", value: 7 },
    ],
    [
      "not a number",
      "{ course: 218, to: TARNO, altitude_ft: .nan }",
      "brief-wrong-type",
      44,
      { expected: "number" },
    ],
    [
      "far too high",
      "{ course: 218, to: TARNO, altitude_ft: 99999 }",
      "brief-out-of-range",
      44,
      { value: 99999, most: 60000 },
    ],
    ["leg of one fix", "{ leg: [TARNO] }", "brief-wrong-length", 12, { expected: 2, found: 1 }],
    [
      "leg to itself",
      "{ leg: [TARNO, TARNO] }",
      "brief-leg-without-length",
      12,
      { from: "TARNO", to: "TARNO" },
    ],
    [
      "impossible time",
      "{ course: 218, to: TARNO, between: [09:44, 25:00] }",
      "brief-not-a-time",
      48,
      { value: "25:00" },
    ],
    [
      "window of one time",
      "{ course: 218, to: TARNO, between: [09:44] }",
      "brief-wrong-length",
      40,
      { expected: 2 },
    ],
    [
      "window without length",
      "{ course: 218, to: TARNO, between: [09:44, 09:44] }",
      "brief-empty-window",
      40,
      { start: "09:44" },
    ],
    [
      "window whose end stands before its start",
      "{ course: 218, to: TARNO, between: [01:20, 01:13] }",
      "brief-window-too-long",
      40,
      { start: "01:20", hours: 24, most: 12 },
    ],
    [
      "leg of a hold",
      "{ hold: TARNO, inbound: 247, leg: 1 hour }",
      "brief-not-a-leg-length",
      39,
      { value: "1 hour" },
    ],
    [
      "unknown exercise",
      "{ decent: BELVO, to_ft: 1800 }",
      "brief-unknown-exercise",
      5,
      { didYouMean: "descent" },
    ],
    ["text for an exercise", "circuits", "brief-wrong-type", 5, { expected: "map", found: "text" }],
  ];
  it.each(cases)("%s: %s", (_, exercise, code, column, facts) => {
    const errors = errorsOf(withExercises(GOOD, exercise));
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({ code, where: { file: "lesson.yaml", line: 7, column }, facts });
    expect(errors[0]!.where.path).toMatch(/^exercises\[1\]/);
  });

  const frames: [label: string, text: string, code: string, line: number, column: number, facts: object][] = [
    [
      "misspelt key",
      `${withExercises(GOOD)}titel: x\n`,
      "brief-unknown-key",
      7,
      1,
      { key: "titel", didYouMean: "title" },
    ],
    [
      "version 2",
      withExercises(GOOD).replace("brief: 1", "brief: 2"),
      "brief-not-allowed",
      1,
      8,
      { value: 2, allowed: "1" },
    ],
    [
      "no version",
      withExercises(GOOD).replace("brief: 1", "title: x"),
      "brief-missing-key",
      1,
      1,
      { key: "brief" },
    ],
    ["no exercises", `brief: 1\n${FIXES}`, "brief-missing-key", 1, 1, { key: "exercises" }],
    ["empty exercises", "brief: 1\nexercises: []\n", "brief-no-exercises", 2, 12, {}],
    [
      "latitude of 91",
      withExercises(GOOD).replace("35.668", "91"),
      "brief-out-of-range",
      4,
      17,
      { value: 91, most: 90 },
    ],
    [
      "decimal comma",
      withExercises(GOOD).replace("35.668", '"35,668"'),
      "brief-wrong-type",
      4,
      17,
      { expected: "number", found: "text" },
    ],
    [
      "kind of fix",
      withExercises(GOOD).replace("vor,", "vora,"),
      "brief-not-allowed",
      3,
      41,
      { didYouMean: "vor" },
    ],
    [
      "wind",
      `${withExercises(GOOD)}wind: [ { from: 195, from_true: 195, kt: 20 } ]\n`,
      "brief-unknown-key",
      7,
      11,
      { key: "from", didYouMean: null },
    ],
    [
      "aircraft",
      `${withExercises(GOOD)}aircraft: { tas_kt: 0 }\n`,
      "brief-out-of-range",
      7,
      21,
      { value: 0, least: 0, inclusive: false },
    ],
    ["same key twice", `${withExercises(GOOD)}brief: 1\n`, "brief-duplicate-key", 7, 1, {}],
    ["not closed", "brief: 1\nexercises: [", "brief-not-yaml", 2, 13, {}],
    ["tab for indentation", "brief: 1\nfixes:\n\tTARNO: 1\n", "brief-not-yaml", 3, 1, {}],
    ["a list", "- brief: 1\n", "brief-wrong-type", 1, 1, { expected: "map", found: "list" }],
    ["nothing", "", "brief-empty", 1, 1, {}],
    ["a comment", "# brief\n", "brief-empty", 1, 1, {}],
    ["unknown alias", "brief: *one\n", "brief-not-yaml", 1, 1, {}],
  ];
  it.each(frames)("frame, %s", (_, text, code, line, column, facts) => {
    const found = errorsOf(text).find((i) => i.code === code);
    expect(found, JSON.stringify(errorsOf(text))).toMatchObject({ where: { line, column }, facts });
  });

  it("all problems are told at once, in the order of the lines", () => {
    const text = withExercises(
      "{ course: 400, to: TARMO, scal: vor }",
      "{ leg: [BELVO, KESTI], scale: vor }",
    );
    expect(errorsOf(text).map((i) => [i.where.line, i.code])).toEqual([
      [6, "brief-course-out-of-range"],
      [6, "brief-unknown-fix"],
      [6, "brief-unknown-key"],
      [7, "brief-unknown-fix"],
      [7, "brief-angular-scale-on-leg"],
    ]);
  });
});

describe("what is readable is kept, what is left out is counted", () => {
  it("a bad exercise is left out, the others stay", () => {
    const draft = readBrief(
      withExercises(GOOD, "{ course: 400, to: TARNO }", "{ leg: [TARNO, BELVO] }"),
      "b.yaml",
    );
    expect(draft.exercises.map((e) => e.title)).toEqual(["Course 218°M to TARNO", "Leg TARNO to BELVO"]);
    expect(draft.issues.at(-1)).toMatchObject({
      code: "brief-left-out",
      severity: "warning",
      facts: { exercises: 1, which: "2", fixes: 0, winds: 0, aircraft: 0 },
    });
  });

  it("an exercise at a bad fix is left out without being called unknown", () => {
    const text = withExercises(GOOD, "{ leg: [TARNO, BELVO] }").replace("35.668", "91");
    expect(issuesOf(text).map((i) => i.code)).toEqual(["brief-out-of-range", "brief-left-out"]);
    expect(issuesOf(text)[1]!.facts).toMatchObject({ exercises: 1, fixes: 1 });
  });

  it("which exercises are missing, and that an airspeed went with its aircraft, is told", () => {
    const draft = readBrief(
      `${withExercises("{ course: 400, to: TARNO }", GOOD, "{ sing: TARNO }")}aircraft: { tas_kt: 100, category: Z }\n`,
      "b.yaml",
    );
    expect(issueSentence(draft.issues.at(-1)! as never)).toBe(
      "b.yaml: left out because of errors: its exercises 1, 3; its aircraft, and with it the true airspeed. The others follow, numbered anew.",
    );
  });

  it.each([
    ["2.5E", 2.5],
    ["2.5 W", -2.5],
    ["3°w", -3],
  ])("a declination of %s is %d°, as a point list writes it", (text, degrees) => {
    const brief = `brief: 1\nfixes:\n  TARNO: { lat: 35.6, lon: 172.3, declination: ${text} }\nexercises:\n  - ${GOOD}\n`;
    expect(readBrief(brief, "b.yaml").fixes[0]!.declination).toBe(degrees);
  });

  it.each(["2.5N", "-2.5E", "190E", "east"])("a declination of %s is refused", (text) => {
    const brief = `brief: 1\nfixes:\n  TARNO: { lat: 35.6, lon: 172.3, declination: ${text} }\nexercises:\n  - ${GOOD}\n`;
    expect(() => readBrief(brief, "b.yaml")).toThrow(/brief-(wrong-type|out-of-range).*declination/);
  });

  it("with no exercise left nothing is usable", () => {
    expect(() => readBrief(withExercises("{ course: 400, to: TARNO }"), "b.yaml")).toThrow(UnusableInput);
  });

  it("with another version nothing is usable", () => {
    expect(() => readBrief(withExercises(GOOD).replace("brief: 1", "brief: 2"), "b.yaml")).toThrow(
      UnusableInput,
    );
  });
});

describe("YAML 1.2.2 core schema (yaml.org/spec/1.2.2, section 10.3): the traps of 1.1 are shut", () => {
  it.each([
    ["041", 41, "magnetic"],
    ['"041"', 41, "magnetic"],
    ["0", 0, "magnetic"],
    ["360", 0, "magnetic"],
    ["218.5", 218.5, "magnetic"],
    ["218T", 218, "true"],
    ["218 t", 218, "true"],
    ["218°T", 218, "true"],
    ["218M", 218, "magnetic"],
    ["007", 7, "magnetic"],
  ])("course %s", (written, degrees, reference) => {
    const [exercise] = readBrief(withExercises(`{ course: ${written}, to: TARNO }`), "b.yaml").exercises;
    expect(exercise).toMatchObject({ kind: "course", course: { degrees, reference } });
  });

  it("041 is 41 and 09:44 is a time even where the text claims YAML 1.1", () => {
    const text = `%YAML 1.1\n---\n${withExercises("{ course: 041, to: TARNO, between: [09:44, 10:02:30] }")}`;
    const [exercise] = readBrief(text, "b.yaml").exercises;
    expect(exercise).toMatchObject({ course: { degrees: 41 }, between: { start: "09:44", end: "10:02:30" } });
  });

  it("a fix called NO is a fix", () => {
    const text = withExercises("{ course: 218, to: NO }").replace("BELVO:", "NO:");
    expect(readBrief(text, "b.yaml").exercises[0]!.title).toBe("Course 218°M to NO");
  });

  it("a byte order mark and Windows line ends change nothing", () => {
    const text = withExercises(GOOD, "{ course: 400, to: TARNO }").replaceAll("\n", "\r\n");
    const draft = readBrief(`\uFEFF${text}`, "b.yaml");
    expect(draft.exercises).toHaveLength(1);
    expect(draft.issues[0]!.where).toMatchObject({ line: 7, column: 15 });
  });
});

describe("a brief is YAML or JSON, by one path", () => {
  const values = {
    brief: 1,
    title: "Lesson 6",
    aircraft: { tas_kt: 100, category: "A" },
    standard: "instrument-rating-us",
    wind: [{ altitude_ft: 3000, from_true: 360, kt: 20, source: "forecast" }],
    fixes: { TARNO: { lat: 35.6, lon: 172.3, kind: "vor" }, BELVO: { lat: 35.668, lon: 172.069 } },
    exercises: [
      { course: 218, to: "TARNO", altitude_ft: 3000 },
      { course: "041T", from: "BELVO" },
      { arc: "TARNO", radius_nm: 10, from_radial: 300, to_radial: 350 },
      { hold: "TARNO", inbound: 247, turns: "right", leg: "1 min" },
      { descent: "BELVO", to_ft: 1800, before_nm: 1 },
      {
        approach: {
          runway: { threshold: [35.628, 172.03], end: [35.61, 172.012], elevation_ft: 1420 },
          final_fix: "BELVO",
          guidance: "localizer",
          glide_path_deg: 3,
          decision_ft: 1650,
          missed_to: "TARNO",
        },
      },
    ],
  };
  const draft = readBrief(JSON.stringify(values, null, 2), "lesson.json");

  it("reads every kind of exercise", () => {
    expect(draft.issues).toEqual([]);
    expect(draft.source).toBe("json");
    expect(draft.exercises.map((e) => e.title)).toEqual([
      "Course 218°M to TARNO",
      "Course 041°T from BELVO",
      "Arc 10 NM around TARNO, radials 300°M to 350°M",
      "Hold at TARNO, inbound 247°M, right turns",
      "Descent to 1800 ft, 1 NM before BELVO",
      "Approach over BELVO, localizer",
    ]);
  });

  it("the needle at a VOR is a VOR's, elsewhere that of 1 NM", () => {
    expect(draft.exercises[0]).toMatchObject({ scale: { id: "vor" } });
    expect(draft.exercises[1]).toMatchObject({ scale: { id: "rnav-1" } });
  });

  it("aircraft and winds become priors with stated doubt", () => {
    expect(draft.aircraft).toEqual({ trueAirspeed: 100, doubt: 5 });
    expect(draft.winds).toEqual([{ from: 0, speed: 20, doubt: 8, altitude: 3000, source: "forecast" }]);
  });

  it("errors in JSON have their line and column too", () => {
    const text = JSON.stringify(values, null, 2).replace('"course": 218', '"course": 400');
    const line = text.split("\n").findIndex((l) => l.includes("400")) + 1;
    expect(issuesOf(text, "lesson.json")[0]!.where).toMatchObject({ line, column: 17 });
  });
});

describe("hostile text", () => {
  const survives = (text: string) => {
    const issues = issuesOf(text);
    for (const issue of issues) {
      expect(issue.code).toMatch(/^brief-/);
      if (issue.severity === "error") expect(issue.where.line).toBeGreaterThanOrEqual(1);
    }
  };

  it("an alias bomb is refused", () => {
    const levels = Array.from(
      { length: 9 },
      (_, i) => `k${i + 1}: &k${i + 1} [${Array(9).fill(`*k${i}`).join(", ")}]`,
    );
    const issues = issuesOf(`k0: &k0 [x]\n${levels.join("\n")}\n`);
    expect(issues[0]).toMatchObject({ code: "brief-not-yaml" });
  });

  it.each([
    ["brackets", "[".repeat(50_000)],
    ["dashes", "- ".repeat(20_000)],
    ["indentation", Array.from({ length: 2000 }, (_, i) => `${" ".repeat(i)}k:`).join("\n")],
  ])("very deep nesting by %s is an issue", (_, text) => {
    expect(issuesOf(text).length).toBeGreaterThan(0);
    survives(text);
  });

  it("any text gives a draft or issues, never another error (fast-check)", () => {
    const token = fc.constantFrom(
      ...[
        "brief: 1",
        "exercises:",
        "  - ",
        "{ ",
        " }",
        "course: ",
        "041",
        "218T",
        "to: ",
        "TARNO",
        "leg: [",
        "]",
        ", ",
      ],
      ...[
        "\n",
        "fixes:\n",
        "  TARNO: {lat: 1, lon: 2}\n",
        "&a ",
        "*a",
        "!!binary ",
        "!!float ",
        "? ",
        ": ",
        "|\n",
        "'",
        '"',
      ],
      ...[
        "__proto__: ",
        "constructor: ",
        "null",
        "~",
        ".inf",
        "- - -",
        "---\n",
        "...\n",
        "%YAML 1.1\n",
        "\t",
        "<<: ",
      ],
    );
    const text = fc.oneof(
      fc.array(token, { maxLength: 40 }).map((t) => t.join("")),
      fc.string({ unit: "binary" }),
    );
    fc.assert(fc.property(text, survives), { numRuns: 1500 });
  });

  it("any values in the places of a brief give a draft or issues (fast-check)", () => {
    const value = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom("TARNO", "BELVO", "218T", 41, "09:44", ["TARNO", "BELVO"]),
    );
    const key = fc.constantFrom(
      "course",
      "to",
      "from",
      "leg",
      "arc",
      "hold",
      "approach",
      "between",
      "scale",
      "inbound",
      "x",
      "__proto__",
    );
    const exercise = fc.oneof(fc.dictionary(key, value), value);
    const brief = fc.record({
      brief: fc.constant(1),
      wind: value,
      aircraft: value,
      exercises: fc.oneof(fc.array(exercise), value),
    });
    fc.assert(
      fc.property(brief, (b) =>
        survives(JSON.stringify({ ...b, fixes: { TARNO: { lat: 1, lon: 2 }, BELVO: { lat: 2, lon: 2 } } })),
      ),
      { numRuns: 1500 },
    );
  });
});

describe("by construction: fixes and runways of the user's own lists", () => {
  const known = {
    points: [
      { ident: "TARNO", latitude: 35.6, longitude: 172.3, kind: "vor", declination: 2.5, elevation: 1200 },
      { ident: "TARNO", latitude: 12, longitude: 40, kind: "ndb", declination: null, elevation: null },
      {
        ident: "BELVO",
        latitude: 35.668,
        longitude: 172.069,
        kind: "waypoint",
        declination: null,
        elevation: null,
      },
    ],
    runways: [
      {
        ident: "LIND 22",
        threshold: { latitude: 35.7, longitude: 172.2 },
        end: { latitude: 35.69, longitude: 172.19 },
        elevation: 410,
      },
      {
        ident: "LIND 04",
        threshold: { latitude: 35.69, longitude: 172.19 },
        end: { latitude: 35.7, longitude: 172.2 },
        elevation: null,
      },
    ],
    near: { latitude: 35.5, longitude: 172 },
  } as const;
  const read = (text: string) => readBrief(text, "lesson.yaml", known);

  it("places a fix that the brief only names, and keeps it among the fixes", () => {
    const draft = read(
      "brief: 1\nexercises:\n  - { course: 218, to: BELVO }\n  - { hold: BELVO, inbound: 218 }\n",
    );
    expect(draft.issues).toEqual([]);
    expect(draft.fixes.map((f) => [f.ident, f.latitude])).toEqual([["BELVO", 35.668]]);
    expect(draft.exercises).toHaveLength(2);
  });

  it("takes the nearer of two of one ident and says so, once", () => {
    const draft = read(
      "brief: 1\nexercises:\n  - { course: 218, to: TARNO }\n  - { course: 218, from: TARNO }\n",
    );
    expect(draft.fixes[0]).toMatchObject({ latitude: 35.6, kind: "vor", declination: 2.5 });
    expect(draft.issues.map((i) => [i.code, i.severity])).toEqual([["brief-ident-by-place", "note"]]);
    const blind = readBrief("brief: 1\nexercises:\n  - { course: 218, to: TARNO }\n", "lesson.yaml", {
      ...known,
      near: null,
    });
    expect(blind.issues.map((i) => i.code)).toEqual(["brief-ident-twice"]);
  });

  it("says it too of a fix that the brief lists without its place", () => {
    const text =
      "brief: 1\nfixes:\n  TARNO: { kind: ndb }\nexercises:\n  - { course: 218, to: TARNO }\n  - { hold: TARNO, inbound: 218 }\n";
    const draft = read(text);
    expect(draft.fixes).toEqual([expect.objectContaining({ ident: "TARNO", latitude: 35.6, kind: "ndb" })]);
    expect(draft.issues).toMatchObject([
      { code: "brief-ident-by-place", where: { path: "fixes.TARNO", line: 3 }, facts: { ident: "TARNO" } },
    ]);
    const blind = readBrief(text, "lesson.yaml", { ...known, near: null });
    expect(blind.issues.map((i) => i.code)).toEqual(["brief-ident-twice"]);
  });

  it("lets the brief's own fix stand before the list's, and fill up what the list does not say", () => {
    const text =
      "brief: 1\nfixes:\n  TARNO: { lat: 1, lon: 2 }\n  BELVO: { kind: ndb }\nexercises:\n  - { leg: [TARNO, BELVO] }\n";
    const { fixes } = read(text);
    expect(fixes[0]).toMatchObject({ latitude: 1, longitude: 2 });
    expect(fixes[1]).toMatchObject({ latitude: 35.668, kind: "ndb" });
    expect(errorsOf(text).map((i) => i.code)).toContain("brief-missing-key"); // without lists a place is asked for
  });

  it("writes out a runway that is only named; a wrong name or no elevation is told", () => {
    const approach = (runway: string) =>
      `brief: 1\nexercises:\n  - { approach: { runway: ${runway}, guidance: centre-line } }\n  - { leg: [TARNO, BELVO] }\n`;
    const [first] = read(approach("LIND 22")).exercises;
    expect(first).toMatchObject({
      kind: "approach",
      runway: { ident: "LIND 22", threshold: { latitude: 35.7, longitude: 172.2 }, elevation: 410 },
    });
    expect(first).not.toMatchObject({ runway: { lengthAssumed: true } });
    expect(read(approach("LIND 04")).issues.map((i) => i.code)).toContain("brief-runway-without-elevation");
    const wrong = read(approach("LIND 23")).issues.find((i) => i.code === "brief-unknown-runway");
    expect(wrong).toMatchObject({ facts: { didYouMean: "LIND 22" }, where: { line: 3, column: 27 } });
  });
});
