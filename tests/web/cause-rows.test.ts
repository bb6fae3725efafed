/** The table of facts says when the track left its line and why. */
import { describe, expect, it } from "vitest";
import { approachFactRows } from "../../web/approach-fact-rows.ts";
import { arcFactRows } from "../../web/arc-fact-rows.ts";
import { factRows } from "../../web/fact-rows.ts";
import { sampleDebrief } from "../support/debriefed.ts";

const left = (rows: readonly { fact: string; value: string; note: string }[]) =>
  rows.filter(({ fact }) => fact.startsWith("Left "));

describe("the script of each sample is its truth", () => {
  it("a final let go to the wind", async () => {
    const { document } = await sampleDebrief("approach-wind-let-go");
    const exercise = document.exercises[0]!;
    if (exercise.kind !== "approach") throw new Error("no approach");
    const [row, ...more] = left(approachFactRows(exercise.facts!));
    expect(more).toEqual([]);
    expect(row!.fact).toMatch(/^Left the final at 04:08:\d\d$/);
    expect(row!.value).toBe("wind left uncorrected");
    expect(row!.note).toMatch(/^track off by \d+° L; corrected after \d+ s.*; 0\.\d\d NM L at the farthest$/);
    // documents of earlier versions do not say why
    const earlier = exercise.facts!.excursions!.map(({ causes, ...e }) => e);
    expect(left(approachFactRows({ ...exercise.facts!, excursions: earlier }))).toEqual([]);
  });
  it("an arc left to the wind", async () => {
    const { document } = await sampleDebrief("arc-to-a-radial");
    const exercise = document.exercises.find((e) => e.kind === "arc")!;
    if (exercise.kind !== "arc") throw new Error("no arc");
    expect(left(arcFactRows(exercise.facts!)).map(({ value }) => value)).toContain("wind left uncorrected");
  });
  it("courses badly corrected", async () => {
    const { document } = await sampleDebrief("strong-crosswind-badly-corrected");
    const [exercise] = document.exercises;
    if (exercise?.kind !== "course") throw new Error("no course");
    const rows = left(factRows(exercise.facts!));
    expect(rows.length).toBe(exercise.facts!.excursions.length);
    expect(rows[0]!.fact).toMatch(/^Left the course at /);
  });
});
