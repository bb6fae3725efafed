/** Notes changed in two tabs at once: what one of them changed goes into what the other has kept. */
import type { InstructorNotes, Overrule, Remark } from "../../src/index.ts";

const remarkKey = ({ exercise, title }: Remark): string => JSON.stringify([exercise, title ?? null]);
const overruleKey = ({ exercise, title, criterion }: Overrule): string =>
  JSON.stringify([exercise, title, criterion]);

function merged<T>(
  base: readonly T[],
  mine: readonly T[],
  theirs: readonly T[],
  key: (note: T) => string,
): T[] {
  const by = (notes: readonly T[]) => new Map(notes.map((note) => [key(note), note]));
  const [was, is, result] = [by(base), by(mine), by(theirs)];
  for (const id of new Set([...was.keys(), ...is.keys()])) {
    if (JSON.stringify(was.get(id)) === JSON.stringify(is.get(id))) continue;
    const now = is.get(id);
    if (now === undefined) result.delete(id);
    else result.set(id, now);
  }
  return [...result.values()];
}

/** `theirs` with all that lies between `base` and `mine`. */
export const mergedNotes = (
  base: InstructorNotes,
  mine: InstructorNotes,
  theirs: InstructorNotes,
): InstructorNotes => ({
  remarks: merged(base.remarks, mine.remarks, theirs.remarks, remarkKey),
  overrules: merged(base.overrules, mine.overrules, theirs.overrules, overruleKey),
});
