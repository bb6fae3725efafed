/** The list finds what is asked for, in the order asked for. Rows made up by hand, no source. */
import { describe, expect, test } from "vitest";
import { labelled } from "../../web/labelling.ts";
import { EVERYTHING, listed, tagsOf, valuesOf } from "../../web/listing.ts";
import { type FlightRow, NO_LABELS, NO_NOTES } from "../../web/store/schema.ts";

function row(
  id: string,
  change: Partial<FlightRow> & { start?: string; notMet?: number; title?: string },
): FlightRow {
  const { start = null, notMet = 0, title = id, ...rest } = change;
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
