import { csvParse } from "d3-dsv";
import { describe, expect, it } from "vitest";
import { exercisesCsv, legsCsv, pointsCsv } from "../../src/report/index.ts";
import { courses, sampleDebrief } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const NAME = "strong-crosswind-badly-corrected";
/** Units and references that end the names of columns with numbers. */
const UNIT = /_(deg|ft|kt|fpm|nm|s|share|max|utc|min|quarter|half|full)$/;
const WORDS = new Set(
  "utc kind title exercise judged source match_confidence needle_scale findings wind_known rests_on tas95_kt beyond_three_quarter lap segment hold_turns hold_entry_flown hold_entry_asked hold_laps remark flight_remark cause".split(
    " ",
  ),
);

describe("tables parse back (d3-dsv, RFC 4180 quoting)", () => {
  it("points: one row a used point, positions and deviations those of the columns", async () => {
    const { document, series } = await sampleDebrief(NAME);
    const rows = csvParse(pointsCsv(document, series));
    expect(rows.length).toBe(document.log.used);
    rows.forEach((row, i) => {
      near(Number(row.latitude_deg), series.path.latitude[i]!, 5e-8, "°");
      near(Number(row.longitude_deg), series.path.longitude[i]!, 5e-8, "°");
      expect(Date.parse(row.utc!)).toBe(series.path.timeMs[i]);
    });
    const worst = rows
      .filter((r) => r.exercise === "2" && r.judged === "1")
      .map((r) => Number(r.cross_track_right_nm))
      .reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    near(worst, courses(document)[1]!.facts.crossTrack.maxNm, 1e-4, "NM");
  });

  it("legs and exercises: one row each, numbers those of the document", async () => {
    const { document } = await sampleDebrief(NAME);
    const legs = csvParse(legsCsv(document));
    expect(legs.length).toBe(document.legs.length);
    legs.forEach((row, i) => {
      near(Number(row.track_true_deg), document.legs[i]!.trackTrueDeg, 1e-6, "°");
    });
    const exercises = csvParse(exercisesCsv(document));
    expect(exercises.map((r) => r.title)).toEqual(document.exercises.map((e) => e.title));
    expect(exercises.map((r) => Number(r.needle_max))).toEqual(
      courses(document).map((e) => e.facts.needle.max),
    );
  });

  it("every header of a number carries its unit, every direction its reference", async () => {
    const { document, series } = await sampleDebrief(NAME);
    for (const text of [pointsCsv(document, series), legsCsv(document), exercisesCsv(document)]) {
      const { columns } = csvParse(text);
      expect(columns.filter((c) => !UNIT.test(c) && !WORDS.has(c))).toEqual([]);
      expect(
        columns.filter(
          (c) => /^(track|heading|course|wind_from)_(?!angle)/.test(c) && !/true|magnetic/.test(c),
        ),
      ).toEqual([]);
    }
  });

  it("nothing that is not known becomes a number or a word", async () => {
    const { document, series } = await sampleDebrief("calm-and-tidy");
    for (const text of [pointsCsv(document, series), legsCsv(document), exercisesCsv(document)])
      expect(text).not.toMatch(/NaN|undefined|null/);
  });
});

describe("cells that a spreadsheet would run (OWASP, CSV Injection: = + - @, tab, carriage return)", () => {
  it.each(["=1+2", "+1+2", "-1+cmd", "@SUM(A1)", "\t=1", "\r=1", '=HYPERLINK("x","y")'])(
    "%j",
    async (title) => {
      const { document } = await sampleDebrief(NAME);
      const exercises = document.exercises.map((e) => ({ ...e, title }));
      const rows = csvParse(exercisesCsv({ ...document, exercises }));
      for (const row of rows) expect(row.title).toBe(`'${title}`);
    },
  );

  it("quotes, commas and line breaks of a title come back as they were", async () => {
    const { document } = await sampleDebrief(NAME);
    const title = 'a "b", c\nd';
    const exercises = document.exercises.map((e) => ({ ...e, title }));
    expect(csvParse(exercisesCsv({ ...document, exercises })).map((r) => r.title)).toEqual(
      exercises.map(() => title),
    );
  });

  it("numbers below zero stay numbers", async () => {
    const { document } = await sampleDebrief(NAME);
    const row = csvParse(exercisesCsv(document))[1]!;
    expect(Number(row.cross_track_max_right_nm)).toBeLessThan(0);
  });
});
