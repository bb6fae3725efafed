import { describe, expect, it } from "vitest";
import { type DebriefDocument, documentSchema } from "../../src/debrief/document.ts";
import { notesOf, withNotes, withOverrule, withoutOverrule, withRemark } from "../../src/debrief/notes.ts";
import { sampleDebrief } from "../support/debriefed.ts";

const none = { remarks: [], overrules: [] };

async function signed(): Promise<DebriefDocument> {
  const { document } = await sampleDebrief("calm-and-tidy");
  const { title, verdicts } = document.exercises[1]!;
  const remarked = withRemark(none, { exercise: 1, title, text: "Steady. Look ahead earlier." });
  const both = withRemark(remarked, { exercise: null, text: "A good hour." });
  const { criterion } = verdicts[0]!;
  const overrule = { exercise: 1, title, criterion, verdict: "not met" as const, by: "", why: "prompted" };
  return withNotes(document, withOverrule(both, overrule));
}

describe("by construction: what the instructor wrote", () => {
  it("stands in a valid document beside what was computed, which it does not touch", async () => {
    const { document } = await sampleDebrief("calm-and-tidy");
    const written = documentSchema.parse(JSON.parse(JSON.stringify(await signed())));
    expect(written.exercises).toEqual(JSON.parse(JSON.stringify(document.exercises)));
    expect(written.remarks.map(({ text }) => text)).toEqual(["Steady. Look ahead earlier.", "A good hour."]);
    expect(written.overrules?.[0]).toMatchObject({ exercise: 1, verdict: "not met", why: "prompted" });
  });

  it("goes with its exercise when a new working-out puts that elsewhere", async () => {
    const document = await signed();
    const moved = { ...document, exercises: document.exercises.toReversed(), remarks: [], overrules: [] };
    const again = withNotes(moved, notesOf(document));
    const at = moved.exercises.findIndex(({ title }) => title === document.exercises[1]!.title);
    expect(again.remarks[0]).toMatchObject({ exercise: at, text: "Steady. Look ahead earlier." });
    expect(again.overrules?.[0]?.exercise).toBe(at);
  });

  it("stays under its title when the exercise is no more", async () => {
    const document = await signed();
    const again = withNotes({ ...document, exercises: [] }, notesOf(document));
    expect(again.remarks).toHaveLength(2);
    expect(again.remarks[0]).toMatchObject({ exercise: null, title: document.exercises[1]!.title });
    expect(again.overrules?.[0]).toMatchObject({ exercise: null, why: "prompted" });
  });

  it("a remark or a verdict written again replaces the first; an empty one takes it away", async () => {
    const notes = notesOf(await signed());
    const [remark] = notes.remarks;
    const [overrule] = notes.overrules;
    expect(withRemark(notes, { ...remark!, text: "Again." }).remarks.map(({ text }) => text)).toEqual([
      "A good hour.",
      "Again.",
    ]);
    expect(withRemark(notes, { ...remark!, text: " " }).remarks).toHaveLength(1);
    expect(withOverrule(notes, { ...overrule!, verdict: "met" }).overrules).toEqual([
      { ...overrule, verdict: "met" },
    ]);
    expect(withoutOverrule(notes, overrule!).overrules).toEqual([]);
  });
});
