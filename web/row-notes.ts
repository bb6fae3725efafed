/** The notes of a flight in the logbook: written down letter by letter at once, and carried into its row a moment later. */
import { type DebriefDocument, type InstructorNotes, notesOf } from "../src/index.ts";
import { orSay } from "./flight.ts";
import { type NotesKeeper, takeNotes } from "./kept-notes.ts";
import { changeRows, flightRow } from "./store/flights.ts";
import { mergedNotes } from "./store/merged-notes.ts";
import { onChange } from "./store/news.ts";
import { type FlightRow, NO_NOTES } from "./store/schema.ts";

/** On the way: not yet in the row. `base` is what the row held when the writing began. */
interface OnTheWay {
  readonly base: InstructorNotes;
  readonly notes: InstructorNotes;
}

const PREFIX = "hindtrack notes on the way ";
/** Long enough that a word is typed, short enough that nobody waits. Chosen. */
const PAUSE_MS = 400;

function onTheWay(id: string): OnTheWay | null {
  try {
    const text = localStorage.getItem(PREFIX + id);
    return text === null ? null : (JSON.parse(text) as OnTheWay);
  } catch {
    return null;
  }
}

/** Carries what is on the way into the row; what was written meanwhile stays on the way. */
async function carry(id: string): Promise<void> {
  const carried = onTheWay(id);
  if (!carried) return;
  await changeRows([id], (row) => ({ notes: mergedNotes(carried.base, carried.notes, row.notes) }));
  const now = onTheWay(id);
  if (now && JSON.stringify(now.notes) !== JSON.stringify(carried.notes)) {
    localStorage.setItem(PREFIX + id, JSON.stringify({ base: carried.notes, notes: now.notes }));
  } else localStorage.removeItem(PREFIX + id);
}

/** What was on the way when the page was closed. */
export async function carryAll(): Promise<void> {
  try {
    const ids = Object.keys(localStorage).flatMap((key) =>
      key.startsWith(PREFIX) ? [key.slice(PREFIX.length)] : [],
    );
    for (const id of ids) await orSay(carry(id));
  } catch {
    // No storage at all: then nothing was on the way.
  }
}

/** The notes of a row, with those on the way; a row that has none takes what an earlier version kept by the file's name. */
export function notesOfRow({ id, notes }: FlightRow, document: DebriefDocument): InstructorNotes {
  const way = onTheWay(id);
  if (way) return mergedNotes(way.base, way.notes, notes);
  const bare = notes.remarks.length + notes.overrules.length === 0;
  const older = bare ? takeNotes(document) : null;
  if (!older) return notes;
  keepOnTheWay(id, { base: NO_NOTES, notes: older });
  return older;
}

function keepOnTheWay(id: string, way: OnTheWay): boolean {
  try {
    localStorage.setItem(PREFIX + id, JSON.stringify(way));
    return true;
  } catch {
    return false;
  }
}

/** Notes that stand elsewhere after a new working out go into the row by the way of those just typed, so that none stands there twice. */
export function carryMoved({ id, notes: base }: FlightRow, notes: InstructorNotes): void {
  if (keepOnTheWay(id, { base, notes })) void orSay(carry(id));
  else void orSay(changeRows([id], (now) => ({ notes: mergedNotes(base, notes, now.notes) })));
}

const keepers = new WeakMap<DebriefDocument, NotesKeeper>();

/** The keeper of a flight on the sheet: the same one whenever the sheet comes up again, so that it knows what was written since. */
export function keeperOf(id: string, document: DebriefDocument): NotesKeeper {
  const keeper = keepers.get(document) ?? rowKeeper(id, notesOf(document));
  keepers.set(document, keeper);
  return keeper;
}

/** Keeps the notes of one flight; `shown` is what its sheet began with. */
export function rowKeeper(id: string, shown: InstructorNotes): NotesKeeper {
  let base = shown;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** What stands in the row now, with what is on the way. */
  const now = async (): Promise<InstructorNotes | null> => {
    const row = await orSay(flightRow(id));
    if (!row) return null;
    const way = onTheWay(id);
    return way ? mergedNotes(way.base, way.notes, row.notes) : row.notes;
  };
  return {
    kept: () => base,
    keep: (_, notes) => {
      clearTimeout(timer);
      const kept = keepOnTheWay(id, { base: onTheWay(id)?.base ?? base, notes });
      base = notes;
      timer = setTimeout(() => void orSay(carry(id)), PAUSE_MS);
      return kept;
    },
    follow: (hear) => {
      let ended = false;
      const look = async () => {
        const notes = await now();
        if (!notes || ended) return;
        base = notes;
        hear(base);
      };
      // written by another tab while the sheet was not up
      void look();
      const end = onChange((what) => {
        if (what === "flights") void look();
      });
      return () => {
        ended = true;
        end();
      };
    },
  };
}
