/** The instructor's notes on each flight, kept in this browser. */
import type { DebriefDocument, InstructorNotes } from "../src/index.ts";

/** One flight is one log file and the time it begins. */
const flightOf = ({ log }: DebriefDocument): string => `${log.file} ${log.startUtc ?? "untimed"}`;

const fresh = (document: DebriefDocument): string => `hindtrack notes ${flightOf(document)}`;
/** Where one remark a flight was kept before exercises had their own. */
const older = (document: DebriefDocument): string => `hindtrack remark ${flightOf(document)}`;

/** What was written here, or null. */
export function keptNotes(document: DebriefDocument): InstructorNotes | null {
  try {
    const notes = localStorage.getItem(fresh(document));
    if (notes) return JSON.parse(notes) as InstructorNotes;
    const text = localStorage.getItem(older(document));
    return text ? { remarks: [{ exercise: null, text }], overrules: [] } : null;
  } catch {
    return null;
  }
}

/** False where this browser keeps nothing. */
export function keepNotes(document: DebriefDocument, notes: InstructorNotes): boolean {
  try {
    localStorage.setItem(fresh(document), JSON.stringify(notes));
    return true;
  } catch {
    return false;
  }
}
