/** What the instructor wrote, apart from what was computed, so that it outlives every new working-out of the flight. */
import type { DebriefDocument, Overrule, Remark } from "./document.ts";

/** Remarks and overruled verdicts: all of a debrief that cannot be computed again. */
export interface InstructorNotes {
  readonly remarks: readonly Remark[];
  readonly overrules: readonly Overrule[];
}

export const notesOf = ({ remarks, overrules = [] }: DebriefDocument): InstructorNotes => ({
  remarks,
  overrules,
});

/**
 * The document with these notes in place of its own. Each goes to the exercise of its title: the one at its index, else
 * the first that is called so; without one it stays, of the flight, under the title that it was written to.
 */
export function withNotes(document: DebriefDocument, notes: InstructorNotes): DebriefDocument {
  const { exercises } = document;
  const indexOf = (exercise: number | null, title: string | undefined): number | null => {
    if (title === undefined) return exercise !== null && exercise in exercises ? exercise : null;
    if (exercise !== null && exercises[exercise]?.title === title) return exercise;
    const found = exercises.findIndex((e) => e.title === title);
    return found < 0 ? null : found;
  };
  return {
    ...document,
    remarks: notes.remarks.map((r) => ({ ...r, exercise: indexOf(r.exercise, r.title) })),
    overrules: notes.overrules.map((o) => ({ ...o, exercise: indexOf(o.exercise, o.title) })),
  };
}

/** The notes with this remark in place of an earlier one on the same exercise, or on the flight; an empty one is none. */
export function withRemark(notes: InstructorNotes, remark: Remark): InstructorNotes {
  const others = notes.remarks.filter((r) => r.exercise !== remark.exercise || r.title !== remark.title);
  return { ...notes, remarks: remark.text.trim() ? [...others, remark] : others };
}

/** The notes with this verdict in place of an earlier one of the instructor on the same criterion. */
export const withOverrule = (notes: InstructorNotes, overrule: Overrule): InstructorNotes => ({
  ...notes,
  overrules: [...withoutOverrule(notes, overrule).overrules, overrule],
});

/** The notes without the instructor's verdict on a criterion of an exercise: the computed one stands alone. */
export const withoutOverrule = (
  notes: InstructorNotes,
  { exercise, title, criterion }: Pick<Overrule, "exercise" | "title" | "criterion">,
): InstructorNotes => ({
  ...notes,
  overrules: notes.overrules.filter(
    (o) => o.exercise !== exercise || o.title !== title || o.criterion !== criterion,
  ),
});
