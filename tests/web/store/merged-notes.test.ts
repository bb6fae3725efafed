/** Notes written in two tabs: nothing of either is lost, and what was withdrawn stays so. */
import { expect, test } from "vitest";
import { mergedNotes } from "../../../web/store/merged-notes.ts";

const remark = (exercise: number | null, text: string) => ({ exercise, title: `Exercise ${exercise}`, text });
const notes = (...remarks: ReturnType<typeof remark>[]) => ({ remarks, overrules: [] });
const overrule = {
  exercise: 1,
  title: "x",
  criterion: "course-needle",
  verdict: "met",
  by: "",
  why: "",
} as const;

test("each tab changed another remark: both stand", () => {
  const base = notes(remark(1, "a"), remark(2, "b"));
  const mine = notes(remark(1, "mine"), remark(2, "b"));
  const theirs = notes(remark(1, "a"), remark(2, "theirs"), remark(3, "new"));
  expect(mergedNotes(base, mine, theirs).remarks).toEqual([
    remark(1, "mine"),
    remark(2, "theirs"),
    remark(3, "new"),
  ]);
});

test("a remark withdrawn here goes, one unchanged here stays as it is there", () => {
  const base = notes(remark(1, "a"), remark(2, "b"));
  expect(mergedNotes(base, notes(remark(2, "b")), base)).toEqual(notes(remark(2, "b")));
  expect(mergedNotes(base, base, notes(remark(1, "a")))).toEqual(notes(remark(1, "a")));
});

test("verdicts of the instructor likewise", () => {
  const none = notes();
  const one = { remarks: [], overrules: [overrule] };
  expect(mergedNotes(none, one, notes(remark(1, "x")))).toEqual({
    remarks: [remark(1, "x")],
    overrules: [overrule],
  });
  expect(mergedNotes(one, none, one).overrules).toEqual([]);
});
