/** The list finds what is asked for, in the order asked for. Rows made up by hand, no source. */
import { describe, expect, test } from "vitest";
import { decided } from "../../web/decided.ts";
import { labelled } from "../../web/labelling.ts";
import { EVERYTHING, listed, tagsOf, valuesOf } from "../../web/listing.ts";
import { type FlightRow, NO_LABELS, NO_NOTES } from "../../web/store/schema.ts";

function row(
  id: string,
  change: Partial<FlightRow> & {
    start?: string;
    notMet?: number;
    title?: string;
    summaryMore?: Partial<FlightRow["summary"]>;
  },
): FlightRow {
  const { start = null, notMet = 0, title = id, summaryMore, ...rest } = change;
  return {
    id,
    added: 1,
    opened: 1,
    changed: 1,
    deleted: null,
    fingerprint: null,
    fileNames: [`${id}.gpx`],
    analysis: 1,
    tries: 0,
    trouble: null,
    notes: NO_NOTES,
    summary: {
      title,
      startUtc: start,
      endUtc: null,
      flight: 0,
      wind: null,
      exercises: { hold: 1 },
      verdicts: { "not met": notMet },
      ...summaryMore,
    },
    ...NO_LABELS,
    ...rest,
  };
}

const ROWS = [
  row("a", {
    start: "2026-10-17T23:59:00.000Z",
    pilot: "A. N.",
    tags: ["night"],
    notMet: 1,
    title: "Lesson 10",
  }),
  row("b", {
    start: "2026-10-18T00:01:00.000Z",
    pilot: "B. O.",
    aircraft: "one",
    notMet: 3,
    title: "Lesson 9",
  }),
  row("c", {
    pilot: "A. N.",
    aircraft: "two",
    title: "circuits",
    notes: { remarks: [{ exercise: null, text: "Well Held" }], overrules: [] },
  }),
];
const ids = (change: Partial<typeof EVERYTHING>) =>
  listed(ROWS, { ...EVERYTHING, ...change }).map((r) => r.id);

describe("what is found", () => {
  test.each([
    [{}, ["b", "a", "c"]],
    [{ words: "lesson NIGHT" }, ["a"]],
    [{ words: "held" }, ["c"]],
    [{ words: "c.gpx" }, ["c"]],
    [{ words: "hold 2026-10" }, ["b", "a"]],
    [{ words: "nowhere" }, []],
    [{ pilot: "A. N." }, ["a", "c"]],
    [{ aircraft: "one", pilot: "A. N." }, []],
    [{ tag: "night" }, ["a"]],
    [{ from: "2026-10-18" }, ["b"]],
    [{ to: "2026-10-17" }, ["a"]],
    [{ from: "2026-10-17", to: "2026-10-18" }, ["b", "a"]],
  ])("%o", (asked, expected) => {
    expect(ids(asked)).toEqual(expected);
  });
});

const LESSONS = [
  row("june", {
    start: "2026-06-09T10:00:00.000Z",
    title: "Radials",
    summaryMore: {
      judged: [{ title: "Course 241° to TARNO", verdicts: { "course-needle": "met" } }],
      fixes: ["TARNO", "BELVO"],
    },
    notMet: 1,
  }),
  row("later", { start: "2026-06-19T10:00:00.000Z", title: "Holds", notMet: 0 }),
  row("july", { start: "2026-07-09T10:00:00.000Z", title: "Lesson 9 of June", notMet: 2 }),
];

describe("what people look for", () => {
  test.each([
    ["9 June", ["june"]],
    ["june 9", ["june"]],
    ["9 jun radials", ["june"]],
    ["19 June 2026", ["later"]],
    ["09 Sept", []],
    ["June", ["july", "later", "june"]],
    ["not met", ["july", "june"]],
    ["2026 not   met radials", ["june"]],
    ["tarno", ["june"]],
    ["belvo 9 june not met", ["june"]],
    ["not judged", ["later"]],
  ])("%s", (words, expected) => {
    expect(listed(LESSONS, { ...EVERYTHING, words }).map((r) => r.id)).toEqual(expected);
  });
});

describe("verdicts that the instructor overruled", () => {
  const overrule = (title: string, criterion: string, verdict: "met" | "not met", exercise = 0) => ({
    ...{ exercise, title, criterion, verdict },
    ...{ by: "", why: "prompted" },
  });
  const judged = [
    { title: "Course 1", verdicts: { needle: "not met", height: "met" } },
    { title: "Hold", verdicts: { needle: "not met" } },
  ];
  const of = (...overrules: ReturnType<typeof overrule>[]) =>
    row("o", {
      notMet: 2,
      summaryMore: { judged, verdicts: { "not met": 2, met: 1 } },
      notes: { remarks: [], overrules },
    });

  test("count as decided, the last word of each criterion once", () => {
    expect(decided(of())).toEqual({ counts: { "not met": 2, met: 1 }, overruled: 0 });
    expect(decided(of(overrule("Course 1", "needle", "met"), overrule("Hold", "needle", "met", 1)))).toEqual({
      counts: { "not met": 0, met: 3 },
      overruled: 2,
    });
    const twice = of(overrule("Course 1", "needle", "not met"), overrule("Course 1", "needle", "met"));
    expect(decided(twice)).toEqual({ counts: { "not met": 1, met: 2 }, overruled: 1 });
  });

  test("find their exercise by its title where it stands elsewhere now, and count for none that is gone", () => {
    expect(decided(of(overrule("Hold", "needle", "met", 0))).counts).toEqual({ "not met": 1, met: 2 });
    expect(decided(of(overrule("Arc", "needle", "met", 5), overrule("Hold", "speed", "met", 1)))).toEqual({
      counts: { "not met": 2, met: 1 },
      overruled: 0,
    });
  });

  test("are what the list is searched and ordered by", () => {
    const all = [
      of(overrule("Course 1", "needle", "met"), overrule("Hold", "needle", "met", 1)),
      LESSONS[0]!,
    ];
    expect(listed(all, { ...EVERYTHING, words: "not met" }).map((r) => r.id)).toEqual(["june"]);
    expect(listed(all, { ...EVERYTHING, order: "not met" }).map((r) => r.id)).toEqual(["june", "o"]);
  });
});

describe("in which order", () => {
  test.each([
    ["date", false, ["c", "a", "b"]],
    ["not met", true, ["b", "a", "c"]],
    ["title", false, ["c", "b", "a"]], // 9 before 10, small letters as capitals
    ["pilot", false, ["c", "a", "b"]],
  ] as const)("by %s, backwards %s", (order, backwards, expected) => {
    expect(ids({ order, backwards })).toEqual(expected);
  });
});

test("values given before are offered once, without the empty one", () => {
  expect(valuesOf(ROWS, (r) => [r.pilot])).toEqual(["A. N.", "B. O."]);
  expect(valuesOf(ROWS, (r) => [r.aircraft])).toEqual(["one", "two"]);
});

test("tags are parted by commas", () => {
  expect(tagsOf(" night, lesson 6 ,, night")).toEqual(["night", "lesson 6"]);
  expect(tagsOf("")).toEqual([]);
});

test("labelling several leaves what is not given", () => {
  const change = { pilot: " ", aircraft: "three", addTags: ["x"], dropTags: ["night"] };
  expect(labelled(ROWS[0]!, change)).toEqual({ pilot: "A. N.", aircraft: "three", tags: ["x"] });
});
