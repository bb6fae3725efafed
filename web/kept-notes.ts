/** The instructor's notes on a flight that is in no logbook, kept in this browser by the name of its file. */
import type { DebriefDocument, InstructorNotes } from "../src/index.ts";

/** Where the notes of a sheet go as they are written. */
export interface NotesKeeper {
  /** What was written here before, or null. */
  readonly kept: (document: DebriefDocument) => InstructorNotes | null;
  /** False where this browser keeps nothing. */
  readonly keep: (document: DebriefDocument, notes: InstructorNotes) => boolean;
  /** Who flew, and in what, as it is said now; null where nobody said it. */
  readonly flownBy?: () => DebriefDocument["flownBy"] | null;
  /** Hears of notes that another tab wrote, all of them with those of this one; gives what ends the hearing. */
  readonly follow?: (hear: (notes: InstructorNotes) => void) => () => void;
}

/** One flight is one log file and the time it begins. */
const flightOf = ({ log }: DebriefDocument): string => `${log.file} ${log.startUtc ?? "untimed"}`;

const fresh = (document: DebriefDocument): string => `hindtrack notes ${flightOf(document)}`;
/** Where one remark a flight was kept before exercises had their own. */
const older = (document: DebriefDocument): string => `hindtrack remark ${flightOf(document)}`;

function kept(document: DebriefDocument): InstructorNotes | null {
  try {
    const notes = localStorage.getItem(fresh(document));
    if (notes) return JSON.parse(notes) as InstructorNotes;
    const text = localStorage.getItem(older(document));
    return text ? { remarks: [{ exercise: null, text }], overrules: [] } : null;
  } catch {
    return null;
  }
}

function keep(document: DebriefDocument, notes: InstructorNotes): boolean {
  try {
    localStorage.setItem(fresh(document), JSON.stringify(notes));
    return true;
  } catch {
    return false;
  }
}

export const notesByFile: NotesKeeper = { kept, keep };

/** The notes that were kept by the name of the file, given up by it: they go into the logbook. */
export function takeNotes(document: DebriefDocument): InstructorNotes | null {
  const notes = kept(document);
  if (!notes) return null;
  localStorage.removeItem(fresh(document));
  localStorage.removeItem(older(document));
  return notes;
}
